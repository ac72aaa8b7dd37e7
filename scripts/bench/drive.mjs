// The driving process as the bench sees it: a task in, what was measured out.
import { fork, spawnSync } from 'node:child_process'

/** Keeps a process to one core where the system can; without that, server and driver push each other about. */
export function pinned(pid, core) {
  return spawnSync('taskset', ['-a', '-cp', String(core), String(pid)], { stdio: 'ignore' }).status === 0
}

export function driver() {
  const child = fork(new URL('driver.mjs', import.meta.url))
  process.once('exit', () => child.kill('SIGKILL'))
  const waiting = new Map()
  let last = 0
  child.on('message', ({ id, done, error }) => {
    const { resolve, reject } = waiting.get(id)
    waiting.delete(id)
    if (error === undefined) resolve(done)
    else reject(new Error(error))
  })
  const slice = (task) =>
    new Promise((resolve, reject) => {
      const id = ++last
      waiting.set(id, { resolve, reject })
      child.send({ id, task })
    })
  return { slice, pid: child.pid, end: () => child.kill() }
}
