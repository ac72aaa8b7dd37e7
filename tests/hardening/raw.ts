import { connect, type Socket } from 'node:net'

/** A bare connection to a service on this machine, for what no client library would send. */
export interface RawConnection {
  socket: Socket
  /** All that came back, when the other side has closed or the time is over. */
  answer: (withinMs?: number) => Promise<{ text: string; closed: boolean }>
}

export function rawConnection(port: number): RawConnection {
  const socket = connect(port, '127.0.0.1')
  const chunks: Buffer[] = []
  socket.on('data', (chunk) => chunks.push(chunk)).on('error', () => undefined)
  const ended = new Promise<true>((done) => socket.on('close', () => done(true)))
  return {
    socket,
    answer: async (withinMs = 3000) => {
      const late = new Promise<false>((done) => setTimeout(() => done(false), withinMs))
      const closed = await Promise.race([ended, late])
      socket.destroy()
      return { text: Buffer.concat(chunks).toString('latin1'), closed }
    },
  }
}

/** Status codes of the answers in what came back, in order. */
export const statuses = (text: string): number[] =>
  [...text.matchAll(/HTTP\/1\.1 (\d{3}) /g)].map(([, status]) => Number(status))
