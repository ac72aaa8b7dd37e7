import { type Static, Type } from 'typebox'
import { type BoxTuningSections, boxTuningSections } from './box-tuning-sections.ts'
import { type CutListSections, cutListSections } from './cut-list.ts'
import { type LoadImpedanceSections, loadImpedanceSections } from './load-impedance.ts'
import { type PowerBudgetSections, powerBudgetSections } from './power-budget.ts'
import { outputOf } from './quantity.ts'
import { ref, share } from './shared.ts'

export const Material = share(
  'Material',
  Type.Object(
    {
      item: Type.String({ description: 'What to buy or find' }),
      count: outputOf('', 'How many, or how much of the unit'),
      unit: Type.String({ description: 'Unit of the count; empty for pieces' }),
      note: Type.String({ description: 'What to look for' }),
    },
    { additionalProperties: false, description: 'One line of the shopping list' },
  ),
)
export type Material = Static<typeof Material>

export const Reading = share(
  'Reading',
  Type.Object(
    {
      test: Type.String({ description: 'What to measure, where and in which state' }),
      expected: outputOf('', 'What the meter should show'),
      from: outputOf('', 'Lowest reading that is fine'),
      to: outputOf('', 'Highest reading that is fine'),
      unit: Type.String({ description: 'Unit of the reading' }),
      ifNot: Type.String({ description: 'What a reading outside points to' }),
    },
    { additionalProperties: false, description: 'One test with its expected reading' },
  ),
)
export type Reading = Static<typeof Reading>

/** Every section of the other calculations, and what only a whole design has. */
export const designCheckSections = {
  ...boxTuningSections,
  ...loadImpedanceSections,
  ...powerBudgetSections,
  ...cutListSections,
  materials: Type.Array(ref(Material), { description: 'What to buy or find, for the whole set' }),
  readings: Type.Array(ref(Reading), {
    description: 'What a meter should show at each test, in working order',
  }),
}

export type DesignCheckSections = BoxTuningSections &
  LoadImpedanceSections &
  PowerBudgetSections &
  CutListSections & { materials: Material[]; readings: Reading[] }
