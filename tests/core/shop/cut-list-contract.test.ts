import { Ajv } from 'ajv'
import { expect, it } from 'vitest'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import { type CutListRequest, cutListSections } from '../../../src/schema/cut-list.ts'
import { sharedSchemas } from '../../../src/schema/shared.ts'

const ajv = new Ajv({ strict: false })
for (const schema of sharedSchemas())
  if (!ajv.getSchema(String((schema as { $id?: string }).$id))) ajv.addSchema(schema)
const asked = ajv.getSchema('CutListRequest')!
const given = ajv.compile({
  type: 'object',
  properties: cutListSections,
  required: Object.keys(cutListSections),
  additionalProperties: false,
})

const stock = [{ lengthMm: 600, widthMm: 400, thicknessMm: 12 }]
const requests: [string, CutListRequest][] = [
  ['plain parts', { parts: [{ lengthMm: 100, widthMm: 50, count: 3 }], stock }],
  ['parts that do not fit', { parts: [{ lengthMm: 700, widthMm: 50 }], stock }],
  [
    'a box with a slot and an edge band',
    {
      box: {
        kind: 'vented',
        inner: { widthMm: 96, heightMm: 216, depthMm: 136 },
        panelThicknessMm: 12,
        lining: 'filled',
      },
      port: { slot: { widthMm: 60, heightMm: 15 }, lengthMm: 60 },
      stock,
      workshop: { edging: { widthMm: 22 } },
    },
  ],
]

it.each(requests)('%s: request and sections are what the contract says', (_, request) => {
  expect(asked(request), JSON.stringify(asked.errors)).toBe(true)
  const result = cutList(request, { portLengthMm: null })
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  const sections = JSON.parse(JSON.stringify(result.sections))
  expect(given(sections), JSON.stringify(given.errors)).toBe(true)
})

it('the contract names every request field and refuses others', () => {
  expect(asked({ stock: [], parts: [], colour: 'red' })).toBe(false)
})
