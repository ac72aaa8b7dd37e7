/** One input of the form: where its value lies in the design, and how it is called in plain words and in the trade. */
export interface Field {
  /** JSON Pointer, below the base of its group. */
  at: string
  /** Plain words. */
  label: string
  /** The trade term or symbol, where there is one. */
  term?: string
  /** The unit of a bare number; none for ratios and counts. */
  unit?: string
  /** One line: what it is, or where to read it. */
  note: string
  kind: 'quantity' | 'choice' | 'text' | 'switch' | 'numbers' | 'lines'
  choices?: readonly Choice[]
  /** What the service takes when the field is left empty. */
  usual?: string
  /** What a switch that is on stands for; nothing is written while it is off. */
  on?: boolean
}

export interface Choice {
  value: string
  label: string
}

/** Units on offer beside an input; the first is that of a bare number. */
const UNITS: Readonly<Record<string, readonly string[]>> = {
  mm: ['mm', 'cm', 'in'],
  L: ['L', 'mL', 'ft^3'],
  m: ['m', 'cm', 'ft'],
  cm2: ['cm2', 'in^2'],
  g: ['g', 'oz'],
  ohm: ['ohm', 'kohm'],
}

export const unitsOf = ({ unit = '' }: Field): readonly string[] => UNITS[unit] ?? (unit === '' ? [] : [unit])

/** How a unit is printed beside an input. */
export const unitText = (unit: string): string =>
  ({ ohm: 'Ω', kohm: 'kΩ', uF: 'µF', cm2: 'cm²', 'in^2': 'in²', 'ft^3': 'ft³', degC: '°C' })[unit] ?? unit

type Extra = Partial<Pick<Field, 'term' | 'usual'>>

export const quantity = (
  at: string,
  label: string,
  unit: string,
  note: string,
  extra: Extra = {},
): Field => ({
  at,
  label,
  unit,
  note,
  kind: 'quantity',
  ...extra,
})

export const count = (at: string, label: string, note: string, extra: Extra = {}): Field => ({
  at,
  label,
  note,
  kind: 'quantity',
  ...extra,
})

export const choice = (
  at: string,
  label: string,
  note: string,
  choices: readonly Choice[],
  extra: Extra = {},
): Field => ({ at, label, note, kind: 'choice', choices, ...extra })

export const text = (at: string, label: string, note: string): Field => ({ at, label, note, kind: 'text' })

export const yesNo = (at: string, label: string, note: string, on = true): Field => ({
  at,
  label,
  note,
  kind: 'switch',
  on,
})
