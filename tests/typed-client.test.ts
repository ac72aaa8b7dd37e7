import { mkdir, rm, writeFile } from 'node:fs/promises'
import { pathToFileURL } from 'node:url'
import openapiTS, { astToString, type OpenAPI3 } from 'openapi-typescript'
import ts from 'typescript'
import { afterAll, describe, expect, it } from 'vitest'
import { contractOf } from '../src/api/contract.ts'
import { exampleQuery } from '../src/docs/example-query.ts'
import { examplesOf } from './api/contract-checks.ts'
import { buildApp } from './held-app.ts'

// A client in another project: its types are generated from the contract, it is compiled strictly, and it is run.

const app = await buildApp()
const address = await app.listen({ host: '127.0.0.1', port: 0 })
const contract = contractOf(app)
const folder = `${process.cwd()}/node_modules/.cache/typed-client-${process.pid}`
await mkdir(folder, { recursive: true })
afterAll(async () => {
  await app.close()
  await rm(folder, { recursive: true, force: true })
})

const CASES = examplesOf(contract)

/** The query of an example as values of the types that the contract says. */
function queryOf(path: string, example: unknown): Record<string, unknown> {
  const given = new URLSearchParams(exampleQuery(example))
  const parameters = contract.paths[path]?.get?.parameters ?? []
  return Object.fromEntries(
    [...new Set(given.keys())].map((name) => {
      const type = parameters.find((parameter) => parameter.name === name)?.schema.type ?? 'string'
      const texts = given.getAll(name)
      const [text = ''] = texts
      if (type === 'array') return [name, texts]
      if (type === 'boolean') return [name, text === 'true']
      return [name, type === 'string' || Number.isNaN(Number(text)) ? text : Number(text)]
    }),
  )
}

const posts = CASES.map(
  ({ path, example }) =>
    `  { const { data, response } = await client.POST('${path}', { body: ${JSON.stringify(example)} })
    if (data === undefined || typeof data === 'string') throw new Error('no answer')
    const verdict: 'ready' | 'review' | 'blocked' = data.verdict
    told.push({ call: 'POST ${path}', status: response.status, verdict, answer: data.answer }) }`,
)
const gets = CASES.filter(({ get }) => get !== undefined).map(
  ({ path, example }) =>
    `  { const { data, response } = await client.GET('${path}', { params: { query: ${JSON.stringify(queryOf(path, example))} } })
    if (data === undefined || typeof data === 'string') throw new Error('no answer')
    told.push({ call: 'GET ${path}', status: response.status, verdict: data.verdict, answer: data.answer }) }`,
)

const CLIENT = `import createClient from 'openapi-fetch'
import type { paths } from './contract.ts'

export async function callAll(baseUrl: string) {
  const client = createClient<paths>({ baseUrl })
  const told: { call: string; status: number; verdict: string; answer: string }[] = []
${[...posts, ...gets].join('\n')}
  return told
}

export const wrong = () => {
  const client = createClient<paths>({ baseUrl: '' })
  return [
    // @ts-expect-error a volume is a number or text
    () => client.POST('/v1/port', { body: { netVolumeL: true, innerDiameterMm: 30, tuningHz: 80 } }),
    // @ts-expect-error there is no such path
    () => client.POST('/v1/tune', { body: {} }),
    // @ts-expect-error the volume is missing
    () => client.POST('/v1/port', { body: { innerDiameterMm: 30, tuningHz: 80 } }),
  ]
}
`

const OPTIONS: ts.CompilerOptions = {
  strict: true,
  target: ts.ScriptTarget.ES2023,
  module: ts.ModuleKind.NodeNext,
  moduleResolution: ts.ModuleResolutionKind.NodeNext,
  rewriteRelativeImportExtensions: true,
  skipLibCheck: true,
  types: [],
  lib: ['lib.es2023.d.ts', 'lib.dom.d.ts', 'lib.dom.iterable.d.ts'],
  outDir: folder,
}

describe('a client generated from the contract', async () => {
  const document: OpenAPI3 = JSON.parse(JSON.stringify(contract))
  await writeFile(`${folder}/package.json`, '{"type":"module"}')
  await writeFile(`${folder}/contract.ts`, astToString(await openapiTS(document)))
  await writeFile(`${folder}/client.ts`, CLIENT)
  const program = ts.createProgram([`${folder}/client.ts`], OPTIONS)

  it('compiles with every example, and not with fields, paths or bodies that are not there', () => {
    const told = ts
      .getPreEmitDiagnostics(program)
      .map(
        ({ file, start, messageText }) =>
          `${file?.text.slice(start, (start ?? 0) + 60)}: ${ts.flattenDiagnosticMessageText(messageText, '\n')}`,
      )
    expect(told).toEqual([])
  })

  it('calls every operation and gets the answer', async () => {
    program.emit()
    const { callAll } = await import(pathToFileURL(`${folder}/client.js`).href)
    const told: { call: string; status: number; verdict: string; answer: string }[] = await callAll(address)
    const operations = Object.values(contract.paths).flatMap((methods) => Object.keys(methods))
    expect(told).toHaveLength(operations.length)
    for (const { call, status, answer } of told) {
      expect(status, call).toBe(200)
      expect(answer, call).toMatch(/\.$/)
    }
  })
})
