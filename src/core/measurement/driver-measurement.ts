import type { DriverMeasurementRequest } from '../../schema/driver-measurement.ts'
import type { DriverMeasurementSections, PairRow } from '../../schema/driver-measurement-sections.ts'
import type { Finding } from '../../schema/frame.ts'
import { measurementFigureRules } from '../findings/measurement-figures.ts'
import { measurementMatchRules } from '../findings/measurement-match.ts'
import { measurementReadingRules } from '../findings/measurement-readings.ts'
import { apply } from '../findings/rule.ts'
import { type Fault, isRefusal, type Outcome, type Refusal } from '../outcome.ts'
import { type Measured, measureDriver } from './measure-driver.ts'
import { measurementWorking } from './measurement-working.ts'
import { pairsOf } from './pairing.ts'
import { BENCH_CAUTIONS, planOf } from './plan.ts'

const RULES = [...measurementFigureRules, ...measurementReadingRules]

function repeatedNames({ drivers }: DriverMeasurementRequest): Fault[] {
  const ids = drivers.map(({ id }) => id)
  return ids.flatMap((id, i) =>
    ids.indexOf(id) === i
      ? []
      : [{ at: `/drivers/${i}/id`, message: `"${id}" is there twice; give each driver a name of its own` }],
  )
}

/** A second sweep, a mass or a box without the first one is a slip. */
function loneSweeps({ drivers }: DriverMeasurementRequest): Fault[] {
  return drivers.flatMap(({ freeAir, withMass, inBox }, i) =>
    freeAir === undefined && (withMass !== undefined || inBox !== undefined)
      ? [{ at: `/drivers/${i}/freeAir`, message: 'a second sweep needs the one in free air beside it' }]
      : [],
  )
}

function matchFindings(pairs: readonly PairRow[], request: DriverMeasurementRequest): Finding[] {
  return pairs.flatMap((pair) => {
    const index = request.drivers.findIndex(({ id }) => id === pair.second)
    return apply(measurementMatchRules, { pair, at: `/drivers/${index}`, others: pairs.length > 1 })
  })
}

/**
 * `/v1/driver-measurement`: parameters of bare drivers from their impedance sweeps, each with its uncertainty, how well
 * drivers match, and for those without a sweep how to take one. Refuses sweeps that cannot be of a driver, every fault
 * at once.
 */
export function driverMeasurement(
  request: DriverMeasurementRequest,
): Outcome<DriverMeasurementSections> | Refusal {
  const boxVolumeL = request.boxVolumeL ?? null
  const slips = [...repeatedNames(request), ...loneSweeps(request)]
  if (slips.length > 0) return { faults: slips }
  const entries = request.drivers.map((driver, i) => ({ driver, at: `/drivers/${i}` }))
  const results = entries
    .filter(({ driver }) => driver.freeAir !== undefined)
    .map(({ driver, at }) => measureDriver(driver, at, boxVolumeL))
  const faults = results.flatMap((result) => (isRefusal(result) ? result.faults : []))
  if (faults.length > 0) return { faults }
  const measured = results.filter((result): result is Measured => !isRefusal(result))
  const plans = entries
    .filter(({ driver }) => driver.freeAir === undefined)
    .map(({ driver, at }) => planOf(driver, at))
  const pairs = pairsOf(measured.map(({ result }) => result))
  const toMeasure = plans.length > 0 || measured.some(({ result }) => result.next.length > 0)
  return {
    sections: {
      measured: measured.map(({ result }) => result),
      pairs,
      plan: plans.map(({ plan }) => plan),
    },
    findings: [...measured.flatMap((facts) => apply(RULES, facts)), ...matchFindings(pairs, request)],
    assumptions: [...measured, ...plans].flatMap(({ assumptions }) => assumptions),
    cautions: toMeasure ? [...BENCH_CAUTIONS] : [],
    working: measured.flatMap(measurementWorking),
  }
}
