import type { IncomingMessage } from 'node:http'
import { Readable } from 'node:stream'

const MOST_BYTES = 16 * 1024 * 1024
const LONGEST_MS = 20_000
const SILENCE_MS = 2_000

/** true while a body is on its way that nobody has read. */
export function bodyIsUnread({ headers, readableEnded }: IncomingMessage): boolean {
  const announced = headers['transfer-encoding'] !== undefined || Number(headers['content-length'] ?? 0) > 0
  return announced && !readableEnded
}

/**
 * An answer to a request whose body is still arriving: the answer goes out at once and ends when the rest has been
 * read and thrown away. Many clients read nothing before they have sent all, and an early close breaks them.
 */
export function lingering(answer: string, request: IncomingMessage): Readable {
  async function* parts() {
    yield answer
    await discarded(request)
  }
  return Readable.from(parts())
}

/** Waits for the end of a body, but not for a huge, a slow or a silent one. */
async function discarded(request: IncomingMessage): Promise<void> {
  if (request.readableEnded || request.destroyed) return
  const latest = Date.now() + LONGEST_MS
  let bytes = 0
  await new Promise<void>((resolve) => {
    const done = () => {
      clearTimeout(silence)
      request.off('data', count).off('end', done).off('close', done)
      resolve()
    }
    const silence = setTimeout(done, SILENCE_MS)
    const count = (part: Buffer) => {
      bytes += part.length
      silence.refresh()
      if (bytes > MOST_BYTES || Date.now() > latest) done()
    }
    request.on('data', count).on('end', done).on('close', done)
  })
}
