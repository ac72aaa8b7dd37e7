import { spawn, spawnSync } from 'node:child_process'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as delay } from 'node:timers/promises'
import { ended } from './instances.ts'

export const hasNginx = spawnSync('nginx', ['-v']).status === 0

const CONF = new URL('../../docker/nginx.conf', import.meta.url)

/** The folder is ours: a worker of another user could keep no large body in it. */
const AS_OURSELVES = process.getuid?.() === 0 ? ' user root;' : ''

/** The configuration of the image with other addresses and another folder, and whatever a test wants changed. */
async function confFor(port: number, folder: string, addresses: readonly string[], change: Change) {
  const conf = await readFile(CONF, 'utf8')
  const servers = addresses
    .map((address) => `server ${new URL(address).host} max_fails=1 fail_timeout=1s;`)
    .join('\n    ')
  const moved = conf.replaceAll('/tmp/', `${folder}/`)
  return [
    ['/dev/stderr', `${folder}/error.log`] as const,
    ['server boxwright:8080 max_fails=1 fail_timeout=1s;', servers] as const,
    ['listen 8080;', `listen 127.0.0.1:${port};`] as const,
    ...change,
  ].reduce((text, [from, to]) => {
    if (text.split(from).length !== 2) throw new Error(`"${from}" does not stand once in nginx.conf`)
    return text.replace(from, () => to)
  }, moved)
}

type Change = readonly (readonly [from: string, to: string])[]

/** nginx before these addresses, on a free port. */
export async function startNginx(addresses: readonly string[], change: Change = []) {
  const folder = await mkdtemp(join(tmpdir(), 'boxwright-nginx-'))
  const port = await freePort()
  await writeFile(`${folder}/nginx.conf`, await confFor(port, folder, addresses, change))
  const child = spawn(
    'nginx',
    [
      '-p',
      folder,
      '-e',
      `${folder}/error.log`,
      '-c',
      `${folder}/nginx.conf`,
      '-g',
      `daemon off;${AS_OURSELVES}`,
    ],
    {
      stdio: 'inherit',
    },
  )
  const address = `http://127.0.0.1:${port}`
  for (let tries = 0; !(await answers(address)); tries++) {
    if (child.exitCode !== null || tries > 100) throw new Error(await readFile(`${folder}/error.log`, 'utf8'))
    await delay(50)
  }
  return {
    address,
    end: async () => {
      await ended(child, 'SIGQUIT')
      await rm(folder, { recursive: true })
    },
  }
}

const answers = (address: string): Promise<boolean> =>
  fetch(`${address}/health/live`).then(
    (response) => response.ok,
    () => false,
  )

async function freePort(): Promise<number> {
  const server = createServer()
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const address = server.address()
  await new Promise((resolve) => server.close(resolve))
  if (address === null || typeof address === 'string') throw new Error('no port')
  return address.port
}
