// Puts a fresh answer to the example design into the README; `npm run record` builds first.
import { readFile, writeFile } from 'node:fs/promises'
import { buildApp } from '../dist/app.js'

const readme = new URL('../README.md', import.meta.url)
const design = await readFile(new URL('../tests/designs/shelf-pair.json', import.meta.url), 'utf8')
const app = await buildApp()
const response = await app.inject({
  method: 'POST',
  url: '/v1/design-check',
  headers: { 'content-type': 'application/json' },
  payload: design,
})
await app.close()
const { answer, verdict, findings, tuning } = response.json()
const { nearestAlignment: _, ...figures } = tuning
const recorded = JSON.stringify({ answer, verdict, findings: findings.slice(0, 1), tuning: figures }, null, 2)
const text = await readFile(readme, 'utf8')
const block = /(<!-- recorded: shelf-pair -->\n```json\n)[\s\S]*?(\n```)/
await writeFile(
  readme,
  text.replace(block, (_match, before, after) => before + recorded + after),
)
