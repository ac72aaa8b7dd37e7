// Lists the licence of every package that the service is installed with, and fails on one that is unknown or would bind
// whoever uses the service. Read from the packages themselves, as npm has installed them.
//   node scripts/licences.mjs
import { readFile } from 'node:fs/promises'

/** They ask for their text to be kept, and for little else. */
const PERMISSIVE = new Set([
  'MIT',
  'ISC',
  'Apache-2.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  '0BSD',
  'BlueOak-1.0.0',
  'CC0-1.0',
  'Unlicense',
  'Zlib',
  'Bitstream-Vera',
])

/** Where the field of the package names none: the one that was read in its licence file, and how that file begins. */
const READ = {
  'png-js': { licence: 'MIT', begins: 'MIT License' },
  'dejavu-fonts-ttf': { licence: 'Bitstream-Vera', begins: 'Fonts are (c) Bitstream' },
}

const { packages } = JSON.parse(await readFile('package-lock.json', 'utf8'))
const installed = Object.entries(packages).filter(
  ([path, { dev, devOptional }]) => path !== '' && !dev && !devOptional,
)

async function licenceOf(path, name) {
  const read = READ[name]
  if (read !== undefined) {
    const text = await readFile(`${path}/LICENSE`, 'utf8')
    return text.startsWith(read.begins) ? read.licence : 'another one than was read'
  }
  const text = await readFile(`${path}/package.json`, 'utf8').catch(() => undefined)
  // A package for another system is not installed here; the lock file tells what it is under.
  const { license } = text === undefined ? packages[path] : JSON.parse(text)
  return typeof license === 'string' ? license : 'unknown'
}

/** One of the alternatives, or all that holds together, is permissive. */
const isPermissive = (expression) =>
  expression
    .replace(/[()]/g, '')
    .split(' OR ')
    .some((one) => one.split(' AND ').every((name) => PERMISSIVE.has(name.trim())))

const groups = new Map()
for (const [path, { version }] of installed) {
  const name = path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length)
  const licence = await licenceOf(path, name)
  groups.set(licence, [...(groups.get(licence) ?? []), `${name}@${version}`])
}
for (const [licence, names] of [...groups].sort(([, a], [, b]) => b.length - a.length))
  console.log(`${licence} (${names.length}): ${names.join(', ')}`)

const binding = [...groups].filter(([licence]) => !isPermissive(licence))
console.log(
  `${installed.length} packages, ${binding.flatMap(([, names]) => names).length} not known to be permissive`,
)
for (const [licence, names] of binding) console.error(`  ${licence}: ${names.join(', ')}`)
if (binding.length > 0) process.exitCode = 1
