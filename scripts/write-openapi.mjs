// Writes openapi/openapi.json from the built service; `npm run openapi` builds first.
import { mkdir, writeFile } from 'node:fs/promises'
import { contractOf } from '../dist/api/contract.js'
import { buildApp } from '../dist/app.js'

const app = await buildApp()
await app.ready()
const file = new URL('../openapi/openapi.json', import.meta.url)
await mkdir(new URL('.', file), { recursive: true })
await writeFile(file, `${JSON.stringify(contractOf(app), null, 2)}\n`)
await app.close()
console.log(`openapi/openapi.json holds ${Object.keys(contractOf(app).paths).length} paths`)
