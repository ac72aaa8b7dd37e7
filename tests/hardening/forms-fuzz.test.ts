import fc from 'fast-check'
import { afterAll, describe, expect, it } from 'vitest'
import { contractOf } from '../../src/api/contract.ts'
import { sharedSchema } from '../../src/schema/shared.ts'
import { bodiesOf } from '../api/arbitrary-body.ts'
import { bent, turned } from '../api/bent-body.ts'
import { contractChecks, examplesOf } from '../api/contract-checks.ts'
import { buildApp } from '../held-app.ts'

const SEED = Number(process.env['FUZZ_SEED'] ?? 20_260_104)
const INPUTS = Number(process.env['FUZZ_INPUTS'] ?? 800)
const PATIENCE_MS = process.env['FUZZ_INPUTS'] === undefined ? 180_000 : 3_600_000
/** Printing takes a hundred times as long as drawing. */
const ONE_IN_PRINT = 40

const app = await buildApp()
await app.ready()
afterAll(() => app.close())
const contract = contractOf(app)
const RUNS = Math.ceil(INPUTS / examplesOf(contract).length)
const faultsOf = contractChecks(contract)

const wordsOf = (path: string, name: string): string[] => {
  const parameters = contract.paths[path]?.post?.parameters ?? []
  const words = parameters.find((parameter) => parameter.name === name)?.schema.enum ?? []
  return words.map(String)
}

/** Every form in which an operation answers, each picture and each table by itself. */
function formsOf(path: string) {
  const forms = wordsOf(path, 'format').flatMap((format) => {
    if (format === 'svg') return wordsOf(path, 'picture').map((picture) => `svg&picture=${picture}`)
    if (format === 'csv') return wordsOf(path, 'table').map((table) => `csv&table=${table}`)
    return [format]
  })
  const drawn = forms.filter((form) => form !== 'pdf' && form !== 'json')
  const printed = forms.filter((form) => form === 'pdf')
  return fc.oneof(
    { arbitrary: fc.constantFrom(...drawn), weight: ONE_IN_PRINT },
    ...printed.map((form) => ({ arbitrary: fc.constant(form), weight: 1 })),
  )
}

const schemaOf = (path: string) => {
  const pointer = contract.paths[path]?.post?.requestBody?.content['application/json']?.schema.$ref ?? ''
  return sharedSchema(pointer.split('/').at(-1) ?? '') ?? {}
}

describe(`${RUNS} bodies of seed ${SEED} in every form of answer`, () => {
  it.each(examplesOf(contract))(
    'make no 5xx of $path, and no number that is none',
    async ({ path, example }) => {
      const statuses = new Set<number>()
      const bodies = fc.oneof(
        { arbitrary: turned(example), weight: 4 },
        { arbitrary: bent(example), weight: 1 },
        { arbitrary: bodiesOf(schemaOf(path)), weight: 1 },
      )
      await fc.assert(
        fc.asyncProperty(bodies, formsOf(path), async (body, form) => {
          const url = `${path}?format=${form}`
          const response = await app.inject({
            method: 'POST',
            url,
            payload: JSON.stringify(body) ?? 'null',
            headers: { 'content-type': 'application/json' },
          })
          statuses.add(response.statusCode)
          expect(response.statusCode, `${form}: ${response.body.slice(0, 200)}`).toBeLessThan(500)
          expect(
            response.body.match(/.{0,80}\b(?:NaN|Infinity|undefined)\b.{0,20}/)?.[0],
            form,
          ).toBeUndefined()
          expect(faultsOf(path, 'post', response)).toEqual([])
        }),
        { seed: SEED, numRuns: RUNS },
      )
      expect([...statuses].sort()).toEqual(expect.arrayContaining([200, 422]))
    },
    PATIENCE_MS,
  )
})
