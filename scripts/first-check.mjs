// The end of `npm run up`: starts the built service, shows one worked design check, keeps serving.
import { readFile } from 'node:fs/promises'
import { address } from '../dist/main.js'

const contract = await fetch(`${address}/openapi.json`).then((answer) => answer.json())

/** The whole job if the service has it, else the first calculation with its own example. */
async function firstRequest() {
  if ('/v1/design-check' in contract.paths) {
    const design = new URL('../tests/designs/shelf-pair.json', import.meta.url)
    return { path: '/v1/design-check', body: JSON.parse(await readFile(design, 'utf8')) }
  }
  const [path, { post }] = Object.entries(contract.paths)[0]
  return { path, body: post.requestBody.content['application/json'].example }
}

const { path, body } = await firstRequest()
const response = await fetch(`${address}${path}`, {
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
})
const { answer, verdict, findings } = await response.json()
if (!response.ok) throw new Error(`the first check answered ${response.status}`)

console.log(`\nPOST ${path}${body.name === undefined ? '' : ` with "${body.name}"`}`)
console.log(`\n  ${answer}\n\n  Verdict: ${verdict}`)
for (const { severity, message, remedies } of findings) {
  console.log(`\n  ${severity}: ${message}`)
  for (const remedy of remedies) console.log(`    - ${remedy}`)
}
console.log(`\nOpen ${address} in a browser. Stop the service with Ctrl+C.`)
