// A built service in a process of its own: started on a free port, known by its first line, ended by its own handle.
import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { readFile } from 'node:fs/promises'

/** How a real installation runs: production, and the log as the settings have it when nothing is set. */
const INSTALLED = { NODE_ENV: 'production', PORT: '0', HOST: '127.0.0.1' }

/** The options of Node that the image starts the service with. */
export async function imageOptions() {
  const dockerfile = await readFile(new URL('../../docker/Dockerfile', import.meta.url), 'utf8')
  return JSON.parse(/^CMD (\[.*\])$/m.exec(dockerfile)[1]).filter((word) => word.startsWith('--'))
}

/** Starts a script that prints its address, and gives it back with the way to end it. */
export async function serviceProcess(
  script,
  { args = [], environment = {}, nodeOptions = [], log = 'ignore' } = {},
) {
  const child = spawn(process.execPath, [...nodeOptions, script, ...args], {
    env: { ...process.env, ...INSTALLED, ...environment },
    stdio: ['ignore', 'pipe', log],
  })
  const ended = once(child, 'exit')
  // A script that fails on its way takes its servers with it.
  const takenAlong = () => child.kill('SIGKILL')
  process.once('exit', takenAlong)
  child.once('exit', () => process.off('exit', takenAlong))
  let said = ''
  const address = await new Promise((resolve, reject) => {
    child.once('exit', (code) => reject(new Error(`${script} ended with ${code} before it listened`)))
    child.stdout.on('data', (part) => {
      if (said.length > 10_000) return
      said += part
      const found = /http:\/\/[\d.]+:\d+/.exec(said)
      if (found !== null) resolve(found[0])
    })
  })
  const end = async (signal = 'SIGTERM') => {
    child.kill(signal)
    await ended
  }
  return { address, pid: child.pid, end, ended }
}
