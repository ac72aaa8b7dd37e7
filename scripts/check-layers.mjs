// Checks who may import whom, and that the check saw every file: a blind check is green.
import { readdir } from 'node:fs/promises'
import { cruise } from 'dependency-cruiser'
import extractOptions from 'dependency-cruiser/config-utl/extract-depcruise-options'
import extractTsConfig from 'dependency-cruiser/config-utl/extract-ts-config'

process.chdir(new URL('..', import.meta.url).pathname)

const options = await extractOptions('./.dependency-cruiser.cjs')
const { output } = await cruise(['src', 'tests'], options, undefined, {
  tsConfig: extractTsConfig('./tsconfig.json'),
})

const files = (await readdir('src', { recursive: true })).filter((name) => name.endsWith('.ts'))
const seen = new Set(output.modules.map(({ source }) => source))
const unseen = files.map((name) => `src/${name}`).filter((name) => !seen.has(name))

for (const { rule, from, to } of output.summary.violations) console.error(`${rule.name}: ${from} -> ${to}`)
for (const name of unseen) console.error(`not seen by the check: ${name}`)
console.log(`${files.length} files in src, ${output.summary.violations.length} violations`)
if (unseen.length > 0 || output.summary.violations.length > 0) process.exitCode = 1
