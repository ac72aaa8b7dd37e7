import type { DriverParameters } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { Fault, Refusal } from '../outcome.ts'
import { significant } from '../say.ts'
import { type Known, linkedOf, spread } from './relations.ts'

// A small driver without a measured Qms lies between about 2 and 5: common practice, no source.
export const USUAL_QMS = 3

function impossible(parameters: DriverParameters, at: string): Fault[] {
  const { qts, qes, qms } = parameters
  const over = (name: string, limit: number | undefined) =>
    qts !== undefined && limit !== undefined && qts >= limit
      ? [
          {
            at: `${at}/qts`,
            message: `must be below ${name}, ${significant(limit, 3)}: 1/qts = 1/qes + 1/qms`,
          },
        ]
      : []
  const exponent =
    parameters.leExponent !== undefined && parameters.leMh === undefined
      ? [{ at: `${at}/leExponent`, message: 'says how leMh grows with frequency; give leMh as well' }]
      : []
  return [...over('qes', qes), ...over('qms', qms), ...exponent]
}

/** All that the parameters imply, with a usual Qms where none is; refuses what contradicts. */
export function impliedBy(
  parameters: DriverParameters,
  at: string,
): { known: Known; assumptions: Assumption[] } | Refusal {
  const unphysical = impossible(parameters, at)
  if (unphysical.length > 0) return { faults: unphysical }
  const known = spread(linkedOf(parameters))
  if (known.qms !== undefined) return { known, assumptions: [] }
  const usual = {
    at: `${at}/qms`,
    value: USUAL_QMS,
    unit: '',
    why: 'usual for a small driver; common practice, no source',
  }
  return { known: spread({ ...known, qms: USUAL_QMS }), assumptions: [usual] }
}

/** What is taken of a coil of which nothing is given. */
export const coilAssumptions = ({ leMh }: DriverParameters, at: string): Assumption[] =>
  leMh === undefined
    ? [
        {
          at: `${at}/leMh`,
          value: 0,
          unit: 'mH',
          why: 'not given; the highest notes come out brighter than in truth',
        },
      ]
    : []

export const NO_POSITIVE = 'the other parameters leave no positive value for it'

export const isPositive = (value: number | undefined): value is number =>
  value !== undefined && Number.isFinite(value) && value > 0
