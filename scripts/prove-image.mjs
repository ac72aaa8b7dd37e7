// Runs the steps of docker/Dockerfile where no container engine is: each stage in a root of its own that holds the
// system's programs read-only and nothing of this checkout but what COPY puts there, without this shell's environment;
// then starts the service as the image does, by the number of its user, with every file read-only, and asks its health
// by the image's own command. Needs root on Linux; the base image is this machine's system and Node.
//   node scripts/prove-image.mjs
import { spawn, spawnSync } from 'node:child_process'
import { cp, mkdir, mkdtemp, readFile, readlink, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { setTimeout as delay } from 'node:timers/promises'

const SYSTEM = ['usr', 'bin', 'sbin', 'lib', 'lib64', 'etc', 'dev', 'proc']
const PORT = 18_080

/** The lines of a Dockerfile as words, by stage. */
function stagesOf(text) {
  const stages = []
  for (const line of text.split('\n')) {
    const [word, ...rest] = line.trim().split(/\s+/)
    if (word === '' || word === undefined || word.startsWith('#')) continue
    if (word === 'FROM') stages.push({ name: rest[2] ?? '', steps: [] })
    else stages.at(-1).steps.push({ word, rest, text: line.trim().slice(word.length).trim() })
  }
  return stages
}

/** A root in which the system lies as it does here; links stay links. */
async function emptyRoot(folder) {
  for (const name of SYSTEM) {
    const link = await readlink(`/${name}`).catch(() => undefined)
    if (link === undefined) await mkdir(join(folder, name), { recursive: true })
    else spawnSync('ln', ['-s', link, join(folder, name)])
  }
  await mkdir(join(folder, 'tmp'))
  return folder
}

/** The words that run a command inside a root, with its own mounts that end with it. */
function inside({ root, cwd, environment, user = 0, readOnly = false }, command) {
  const mounts = SYSTEM.map((name) => `[ -L /${name} ] || mount --rbind /${name} "$R/${name}"`)
  const steps = [
    'mount --bind "$R" "$R"',
    ...mounts,
    'mount -o remount,bind,ro "$R/usr"',
    'mount -t tmpfs tmpfs "$R/tmp"',
    ...(readOnly ? ['mount -o remount,bind,ro "$R"'] : []),
    'exec chroot --userspec="$U:$U" "$R" /usr/bin/env -i -C "$D" "$@"',
  ]
  const given = Object.entries({ PATH: '/usr/local/bin:/usr/bin:/bin', HOME: '/tmp', ...environment })
  return {
    file: 'unshare',
    args: [
      '--mount',
      'sh',
      '-ec',
      steps.join('\n'),
      'sh',
      ...given.map(([name, value]) => `${name}=${value}`),
      ...command,
    ],
    options: { env: { PATH: process.env.PATH, R: root, U: String(user), D: cwd } },
  }
}

function run(place, command) {
  const { file, args, options } = inside(place, command)
  const { status } = spawnSync(file, args, { ...options, stdio: 'inherit' })
  if (status !== 0) throw new Error(`${command.join(' ')} ended with ${status}`)
}

/** What each word of a Dockerfile does to an image; nothing else is known here. */
const STEPS = {
  WORKDIR: async (image, { text }) => {
    image.cwd = text
    await mkdir(join(image.root, text), { recursive: true })
  },
  ENV: (image, { rest }) => {
    for (const pair of rest) image.environment[pair.split('=')[0]] = pair.slice(pair.indexOf('=') + 1)
  },
  COPY: copied,
  RUN: (image, { text }) => run(image, ['sh', '-ec', text]),
  USER: (image, { text }) => {
    image.user = Number(text)
  },
  CMD: (image, { text }) => {
    image.command = JSON.parse(text)
  },
  HEALTHCHECK: (image, { text }) => {
    image.health = JSON.parse(text.slice(text.indexOf('[')))
  },
  EXPOSE: () => {},
}

/** Files of this checkout, or of an earlier stage. */
async function copied({ root, cwd }, { rest }, stages) {
  const stage = /^--from=(.*)$/.exec(rest[0])?.[1]
  const [source, paths] =
    stage === undefined ? [process.cwd(), rest] : [stages.get(stage).root, rest.slice(1)]
  const to = paths.at(-1)
  for (const path of paths.slice(0, -1)) {
    const target = join(root, cwd, to, to.endsWith('/') ? basename(path) : '')
    await cp(join(source, path), target, { recursive: true, verbatimSymlinks: true })
  }
}

/** Starts the image's command with read-only files, and waits until its own health check says so. */
async function prove(image) {
  const place = { ...image, readOnly: true, environment: { ...image.environment, PORT: String(PORT) } }
  const { file, args, options } = inside(place, image.command)
  const health = inside(place, image.health)
  const healthy = () =>
    spawnSync(health.file, health.args, { ...health.options, stdio: 'ignore' }).status === 0
  if (healthy()) throw new Error('the health check is content before anything listens')
  const service = spawn(file, args, { ...options, stdio: 'inherit' })
  try {
    for (let tries = 0; !healthy(); tries++) {
      if (tries > 50 || service.exitCode !== null) throw new Error('the health check fails')
      await delay(200)
    }
    const status = await readFile(`/proc/${service.pid}/status`, 'utf8')
    const uid = /^Uid:\s+(\d+)/m.exec(status)?.[1]
    const touch = inside(place, ['sh', '-c', 'touch /app/dist/main.js 2>/dev/null || touch /new 2>/dev/null'])
    const canWrite = spawnSync(touch.file, touch.args, touch.options).status === 0
    if (uid === '0' || canWrite) throw new Error(`runs as ${uid}, can write: ${canWrite}`)
    await askAll(`http://127.0.0.1:${PORT}`)
    console.log(`Healthy as user ${uid}, with read-only files`)
  } finally {
    service.kill()
  }
}

/** One answer of every kind that needs something of the image: a page, a font, a thread. */
async function askAll(address) {
  const contract = await (await fetch(`${address}/openapi.json`)).json()
  const ask = async (path, query) => {
    const { example } = contract.paths[path].post.requestBody.content['application/json']
    const response = await fetch(`${address}${path}${query}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(example),
    })
    const bytes = (await response.arrayBuffer()).byteLength
    if (response.status !== 200) throw new Error(`${path}${query} answers ${response.status}`)
    console.log(`  ${path}${query}: ${bytes} bytes`)
  }
  for (const path of Object.keys(contract.paths)) await ask(path, '')
  for (const form of ['pdf', 'dxf', 'svg']) await ask('/v1/cut-list', `?format=${form}`)
  await ask('/v1/port', '?working=true')
  const page = await fetch(address)
  if (page.status !== 200) throw new Error(`the page answers ${page.status}`)
}

if (process.getuid?.() !== 0 || spawnSync('unshare', ['--mount', 'true']).status !== 0)
  throw new Error('this needs root and mounts of its own')

const work = await mkdtemp(join(tmpdir(), 'prove-image-'))
try {
  const stages = new Map()
  let image
  for (const { name, steps } of stagesOf(await readFile('docker/Dockerfile', 'utf8'))) {
    const root = await emptyRoot(join(work, String(stages.size)))
    image = { root, cwd: '/', environment: {}, user: 0 }
    stages.set(name, image)
    for (const step of steps) {
      console.log(`${step.word} ${step.text}`)
      await STEPS[step.word](image, step, stages)
    }
  }
  await prove(image)
} finally {
  await rm(work, { recursive: true })
}
