import type { Driver } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { LoadImpedanceRequest, LoadImpedanceSections } from '../../schema/load-impedance.ts'
import { type Assembled, assemble } from '../box/assemble.ts'
import { logSpaced } from '../box/circuit.ts'
import { impedanceInBox } from '../box/driver-impedance.ts'
import { groupOf } from '../box/loudspeaker.ts'
import type { ComplexCurve } from '../complex-curve.ts'
import { resonanceOf } from '../driver/resonance.ts'
import { countedDrivers } from '../load/given-wiring.ts'
import { judgingGrid } from '../load/judging-grid.ts'
import { loadCurve, loadImpedance } from '../load/load-impedance.ts'
import { eachOnce, type Fault, isRefusal, type Outcome, type Refusal } from '../outcome.ts'
import { sharingFaults } from './channel-plan.ts'
import { crossoverAssumptions, withCrossover } from './crossover-in-box.ts'
import { ownImpedances } from './other-drivers.ts'

type CurveRange = NonNullable<LoadImpedanceRequest['curve']>

/** The audible octaves and one below, fine enough for every resonance of a driver in a box. */
const WHOLE = { fromHz: 10, toHz: 20_000, points: 240 } as const satisfies Required<CurveRange>

/** Grid that every load is judged on, whatever part of the curve is asked for: 10 Hz to 20 kHz in 240 points. Read only. */
export const LOAD_GRID = logSpaced(WHOLE.fromHz, WHOLE.toHz, WHOLE.points)

/** The grid of the curve that is asked for; the one it is judged on when nothing else is. */
function askedGrid(range: CurveRange): Float64Array {
  const { fromHz, toHz, points } = { ...WHOLE, ...range }
  const isWhole = fromHz === WHOLE.fromHz && toHz === WHOLE.toHz && points === WHOLE.points
  return isWhole ? LOAD_GRID : logSpaced(fromHz, toHz, points)
}

/** The driver in the air of the box, and the box with it, when there is one. */
interface Boxed {
  main: Driver
  assembled: Assembled
}

function boxedOf(request: LoadImpedanceRequest, drivers: readonly Driver[]): Boxed | Refusal | undefined {
  const index = drivers.findIndex((driver) => driver.sharesBox !== false)
  const main = drivers[index]
  if (request.box === undefined) return undefined
  const unshared = sharingFaults(drivers)
  if (main === undefined || unshared.length > 0) return { faults: unshared }
  const assembled = assemble({
    driver: main.parameters,
    driverAt: `/drivers/${index}/parameters`,
    // The impedance of one driver depends on how many move together, not on how they are wired.
    group: groupOf(main.count ?? 1, 'parallel'),
    bodies: drivers.map((driver, i) => ({
      at: `/drivers/${i}`,
      count: driver.count ?? 1,
      frame: driver.frame,
    })),
    box: request.box,
    port: request.port,
    passiveRadiator: request.passiveRadiator,
    sourceResistanceOhm: 0,
    air: undefined,
    space: 'half',
  })
  return 'faults' in assembled ? assembled : { main, assembled }
}

function impedancesOn(
  frequencyHz: Float64Array,
  drivers: readonly Driver[],
  boxed: Boxed | undefined,
): Map<string, ComplexCurve> {
  const own = ownImpedances(drivers, frequencyHz)
  return boxed === undefined
    ? own
    : own.set(boxed.main.id, impedanceInBox(boxed.assembled.speaker, frequencyHz))
}

/** What was filled in to know the drivers and the box. */
function assumptionsOf(
  request: LoadImpedanceRequest,
  drivers: readonly Driver[],
  boxed: Boxed | undefined,
): Assumption[] {
  const outside = drivers.flatMap((driver, i) => {
    if (driver === boxed?.main) return []
    return resonanceOf(driver.parameters, `/drivers/${i}/parameters`)?.assumptions ?? []
  })
  if (boxed === undefined) return outside
  const counts = drivers.flatMap(({ count }, i) =>
    count === undefined || request.drivers[i]?.count !== undefined
      ? []
      : [{ at: `/drivers/${i}/count`, value: count, unit: '', why: 'as many as the wiring connects' }],
  )
  return [...counts, ...boxed.assembled.assumptions, ...outside]
}

const firstOfEach = (assumptions: readonly Assumption[]): Assumption[] =>
  assumptions.filter((row, i) => assumptions.findIndex(({ at }) => at === row.at) === i)

function rangeFaults({ fromHz = WHOLE.fromHz, toHz = WHOLE.toHz }: CurveRange): Fault[] {
  return fromHz < toHz ? [] : [{ at: '/curve/toHz', message: `must be above fromHz, ${fromHz} Hz` }]
}

/**
 * `/v1/load-impedance`: what the amplifier sees, each driver with its impedance in the box when a box is given, else in
 * free air, else as a resistance. Everything is judged on the whole grid; `curve` only says which part to return.
 * Refuses unknown drivers, wirings that do not fit the drivers, and impossible boxes.
 */
export function loadInBox(request: LoadImpedanceRequest): Outcome<LoadImpedanceSections> | Refusal {
  const range = request.curve ?? {}
  const backwards = rangeFaults(range)
  if (backwards.length > 0) return { faults: backwards }
  const drivers = countedDrivers(request)
  const placed = boxedOf(request, drivers)
  const boxed = placed === undefined || isRefusal(placed) ? undefined : placed
  const wired = withCrossover(request, drivers, (grid) => impedancesOn(grid, drivers, boxed))
  const corners = request.crossover === undefined ? [] : [request.crossover.cornerHz]
  const judged = judgingGrid(LOAD_GRID, wired.wiring, corners)
  const outcome = loadImpedance(wired, impedancesOn(judged, drivers, boxed), judged)
  const asked = askedGrid(range)
  const curve =
    asked === judged && !isRefusal(outcome)
      ? outcome.sections.loadCurve
      : loadCurve(wired, impedancesOn(asked, drivers, boxed), asked)
  if (isRefusal(outcome) || isRefusal(curve) || boxed !== placed)
    return {
      faults: eachOnce([placed ?? {}, outcome].flatMap((part) => (isRefusal(part) ? part.faults : []))),
    }
  return {
    ...outcome,
    sections: { ...outcome.sections, loadCurve: curve },
    assumptions: firstOfEach([
      ...(wired === request ? [] : crossoverAssumptions(request)),
      ...assumptionsOf(request, drivers, boxed),
      ...outcome.assumptions,
    ]),
  }
}
