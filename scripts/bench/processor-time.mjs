// What the processor has done for a process, in milliseconds: steadier than the clock where others use the machine too.
import { readdir, readFile } from 'node:fs/promises'

/** All threads of it that are alive, from the scheduler's own account; undefined where the system keeps none. */
export async function processorMs(pid) {
  try {
    const threads = await readdir(`/proc/${pid}/task`)
    const texts = await Promise.all(
      threads.map((thread) => readFile(`/proc/${pid}/task/${thread}/schedstat`, 'utf8')),
    )
    return texts.reduce((sum, text) => sum + Number(text.split(' ')[0]) / 1e6, 0)
  } catch {
    return undefined
  }
}
