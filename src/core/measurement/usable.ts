import type { DriverParameters } from '../../schema/driver.ts'
import type { Fault } from '../outcome.ts'
import { significant } from '../say.ts'
import type { FigureRow } from './figures.ts'

type Name = Exclude<keyof DriverParameters, 'ratedImpedanceOhm'>

/** What driver data may be, as the other calculations take them; a test holds these against the schema. */
export const USABLE: Record<Name, readonly [from: number, to: number]> = {
  fsHz: [5, 20_000],
  qms: [0.05, 100],
  qes: [0.02, 100],
  qts: [0.02, 100],
  vasL: [0.001, 2000],
  sdCm2: [0.2, 3000],
  reOhm: [0.1, 2000],
  leMh: [0, 100],
  leExponent: [0.3, 1],
  mmsG: [0.01, 2000],
  cmsMmPerN: [0.001, 100],
  rmsKgPerS: [0.001, 1000],
  blTm: [0.05, 100],
  xmaxMm: [0.05, 100],
  ratedPowerW: [0.01, 5000],
}

const isName = (figure: string): figure is Name => Object.hasOwn(USABLE, figure)

/** Figures that no driver has: something before them is wrong. */
export const unusableFaults = (figures: readonly FigureRow[], at: string): Fault[] =>
  figures.flatMap(({ figure, value, unit }) => {
    const [from, to] = isName(figure) ? USABLE[figure] : [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
    if (value >= from && value <= to) return []
    const found = Number.isFinite(value) ? `${significant(value, 3)} ${unit}`.trim() : 'no number'
    return [
      {
        at,
        message: `gives ${figure} as ${found}, which no driver has; check the units of sweep, mass, volume and cone, and whether each sweep is the one it is said to be`,
      },
    ]
  })

/** The figures as driver parameters, to be put into any calculation as they are. */
export function parametersFrom(
  figures: readonly FigureRow[],
  ratedImpedanceOhm: number | undefined,
): DriverParameters {
  const parameters: DriverParameters = ratedImpedanceOhm === undefined ? {} : { ratedImpedanceOhm }
  for (const { figure, value } of figures) if (isName(figure)) parameters[figure] = value
  return parameters
}
