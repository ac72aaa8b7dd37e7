import type { DesignCheckSections, Reading } from '../../schema/design-check.ts'
import type { Column, Section } from './block.ts'

const COLUMNS: readonly Column[] = [
  { title: 'Test', share: 0.31 },
  { title: 'Should show', share: 0.14, isNumber: true },
  { title: 'Fine', share: 0.21, isNumber: true },
  { title: 'If not', share: 0.34 },
]

/** Three digits without the noughts that nobody reads off a meter; small currents as a meter shows them. */
function told(value: number, unit: string): string {
  if (unit === 'A' && value < 0.1) return told(1000 * value, 'mA')
  return `${Number(value.toPrecision(3))} ${unit}`.replace('-', '\u2212')
}

const row = ({ test, expected, from, to, unit, ifNot }: Reading): string[] => [
  test,
  told(expected, unit),
  `${told(from, unit)} to ${told(to, unit)}`,
  ifNot,
]

/** What a meter should show, in working order. */
export const readingsSection = ({ readings }: DesignCheckSections): Section => ({
  heading: 'What a meter should show',
  blocks: [{ kind: 'table', columns: COLUMNS, rows: readings.map(row) }],
})
