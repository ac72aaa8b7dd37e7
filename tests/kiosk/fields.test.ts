import { describe, expect, it } from 'vitest'
import { readQuantity } from '../../src/core/quantity.ts'
import { UNIT_NAMES } from '../../src/core/unit-names.ts'
import * as box from '../../src/kiosk/browser/box-fields.ts'
import * as driver from '../../src/kiosk/browser/driver-fields.ts'
import type { Field } from '../../src/kiosk/browser/field.ts'
import { unitsOf } from '../../src/kiosk/browser/field.ts'
import * as measure from '../../src/kiosk/browser/measure-fields.ts'
import * as power from '../../src/kiosk/browser/power-fields.ts'
import * as shop from '../../src/kiosk/browser/shop-fields.ts'
import { Design } from '../../src/schema/design.ts'
import { DriverMeasurementRequest } from '../../src/schema/driver-measurement.ts'
import { sharedSchema } from '../../src/schema/shared.ts'

interface Node {
  $ref?: string
  properties?: Record<string, Node>
  items?: Node
  type?: string
  enum?: string[]
  anyOf?: Node[]
  'x-unit'?: string
}

const plain = (schema: unknown): Node => JSON.parse(JSON.stringify(schema ?? {}))

const resolved = (node: Node | undefined): Node | undefined =>
  node?.$ref === undefined ? node : resolved(plain(sharedSchema(node.$ref.replace('#', ''))))

function schemaAt(root: Node, pointer: string): Node | undefined {
  return pointer
    .split('/')
    .slice(1)
    .reduce<Node | undefined>((node, name) => {
      const here = resolved(node)
      return resolved(/^\d+$/.test(name) ? here?.items : here?.properties?.[name])
    }, root)
}

const flat = (module: object): Field[] =>
  Object.values(module).flatMap((value: unknown): Field[] => {
    if (Array.isArray(value)) return value
    if (isField(value)) return [value]
    return typeof value === 'object' && value !== null ? flat(value) : []
  })
const isField = (value: unknown): value is Field =>
  typeof value === 'object' && value !== null && 'at' in value && 'label' in value

const isUnit = (name: string): name is keyof typeof UNIT_NAMES => name in UNIT_NAMES

const ofDriver = flat(driver).map((field) => ({ ...field, at: `/drivers/0${field.at}` }))
const ofBoard = [...shop.board, ...shop.boardMore].map((field) => ({ ...field, at: `/stock/0${field.at}` }))
const ofShop = [...shop.tools, ...shop.screws, ...shop.hopes]
const ofSizes = Object.values(box.SIZES).flatMap(({ fields }) => fields)
const ofBox = [...flat({ ...box, SIZES: undefined }), ...ofSizes]
const ofDesign = [...ofDriver, ...ofBox, ...flat(power), ...ofBoard, ...ofShop]
const ofMeasuring = flat(measure).map((field) => ({ ...field, at: `/drivers/0${field.at}` }))

const every = [
  ...ofDesign.map((field): [string, Field, Node] => [field.at, field, plain(Design)]),
  ...ofMeasuring.map((field): [string, Field, Node] => [
    `${field.at} measured`,
    field,
    plain(DriverMeasurementRequest),
  ]),
]

describe.each(every)('the field of %s', (_name, field, root) => {
  const node = schemaAt(root, field.at)

  it('has its place in the contract, in the same unit', () => {
    expect(node, field.at).toBeDefined()
    expect(field.unit).toBe(node?.['x-unit'])
  })

  it('offers words that the contract knows, and units that the service reads', async () => {
    const words = node?.enum ?? node?.anyOf?.flatMap((one) => one.enum ?? []) ?? []
    for (const { value } of field.choices ?? []) expect(words).toContain(value)
    const unit = field.unit ?? ''
    if (!isUnit(unit)) return
    for (const other of unitsOf(field))
      expect(await readQuantity(`3 ${other}`, { name: field.at, unit }), other).toMatchObject({
        value: expect.any(Number),
      })
  })

  it('says in plain words what it is', () => {
    expect(field.note).toMatch(/^[\p{Lu}\d].*[.]$/u)
    expect(field.label.length).toBeGreaterThan(3)
  })
})

it('no place has two fields of one name', () => {
  const places = ofDesign.map(({ at }) => at)
  expect(places.length).toBeGreaterThan(70)
  expect([...new Set(places)].length).toBe(places.length)
})
