import { type ChildProcess, execFileSync, spawn } from 'node:child_process'
import { once } from 'node:events'
import { setTimeout as delay } from 'node:timers/promises'
import { fileURLToPath } from 'node:url'
import { builtService } from '../built.ts'

/** One running service; `end` waits until it is gone. */
export interface Instance {
  address: string
  /** What it has logged. */
  said: () => string
  end: (signal: NodeJS.Signals) => Promise<void>
}

/** Several processes of the built service, each on a port that the system chose, ended by their own handles. */
export async function startInstances(count: number, environment: Record<string, string> = {}) {
  const built = await builtService()
  execFileSync('node', ['scripts/build-page.mjs', `${fileURLToPath(built.url)}page`])
  const script = fileURLToPath(new URL('main.js', built.url))
  const instances = await Promise.all(Array.from({ length: count }, () => startInstance(script, environment)))
  return {
    instances,
    /** One more, as whoever keeps the service running would start it in the place of one that is gone. */
    start: async () => {
      const instance = await startInstance(script, environment)
      instances.push(instance)
      return instance
    },
    end: async () => {
      await Promise.all(instances.map(({ end }) => end('SIGKILL')))
      await built.remove()
    },
  }
}

async function startInstance(script: string, environment: Record<string, string>): Promise<Instance> {
  const child = spawn('node', [script], {
    env: { ...process.env, PORT: '0', HOST: '127.0.0.1', TRUST_PROXY: 'loopback', ...environment },
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let said = ''
  child.stdout.setEncoding('utf8').on('data', (part) => {
    said += part
  })
  for (;;) {
    const address = /listens on (\S+),/.exec(said)?.[1]
    if (address !== undefined) return { address, said: () => said, end: (signal) => ended(child, signal) }
    if (child.exitCode !== null) throw new Error('the service ended before it listened')
    await delay(20)
  }
}

/** Ends a process that this test has started, and waits until it is gone. */
export async function ended(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return
  const gone = once(child, 'exit')
  child.kill(signal)
  await gone
}
