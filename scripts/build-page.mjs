// Bundles the touch page into a folder, dist/page when none is named: index.html, and assets with a hash in their names.
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises'
import { basename } from 'node:path'
import { build } from 'esbuild'

const folder = process.argv[2] ?? 'dist/page'
const source = 'src/kiosk/browser'

await rm(folder, { recursive: true, force: true })
await mkdir(folder, { recursive: true })
const { metafile } = await build({
  entryPoints: { page: `${source}/main.ts`, style: `${source}/style.css` },
  entryNames: '[name]-[hash]',
  outdir: `${folder}/assets`,
  bundle: true,
  format: 'esm',
  target: 'es2022',
  minify: true,
  metafile: true,
})
const named = (ending) => basename(Object.keys(metafile.outputs).find((name) => name.endsWith(ending)) ?? '')
const page = await readFile(`${source}/index.html`, 'utf8')
await writeFile(`${folder}/index.html`, page.replace('STYLE', named('.css')).replace('SCRIPT', named('.js')))
const bytes = Object.values(metafile.outputs).reduce((sum, output) => sum + output.bytes, 0)
console.log(`${folder}: ${Math.round(bytes / 1024)} kB`)
