import type { LoadImpedanceRequest, LoadImpedanceSections } from '../../schema/load-impedance.ts'
import { assemble } from '../box/assemble.ts'
import { logSpaced } from '../box/circuit.ts'
import { impedanceInBox } from '../box/driver-impedance.ts'
import { groupOf } from '../box/loudspeaker.ts'
import { loadImpedance } from '../load/load-impedance.ts'
import type { ComplexCurve } from '../load/network.ts'
import type { Fault, Outcome, Refusal } from '../outcome.ts'
import { ownImpedances } from './other-drivers.ts'

/** The grid of a load: 10 Hz to 20 kHz in 240 points when nothing is said. */
export const loadGrid = (curve: LoadImpedanceRequest['curve']): Float64Array =>
  logSpaced(curve?.fromHz ?? 10, curve?.toHz ?? 20_000, curve?.points ?? 240)

interface Known {
  impedances: ReadonlyMap<string, ComplexCurve>
  faults: Fault[]
}

function impedancesOf(request: LoadImpedanceRequest, frequencyHz: Float64Array): Known {
  const own = ownImpedances(request.drivers, frequencyHz)
  const index = request.drivers.findIndex((driver) => driver.sharesBox !== false)
  const main = request.drivers[index]
  if (request.box === undefined || main === undefined) return { impedances: own, faults: [] }
  const count = main.count ?? 1
  const assembled = assemble({
    driver: main.parameters,
    driverAt: `/drivers/${index}/parameters`,
    group: groupOf(count, 'parallel'),
    bodies: request.drivers.map((driver, i) => ({
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
  if ('faults' in assembled) return { impedances: own, faults: assembled.faults }
  return { impedances: own.set(main.id, impedanceInBox(assembled.speaker, frequencyHz)), faults: [] }
}

/**
 * `/v1/load-impedance`: what the amplifier sees, each driver with its impedance in the box when a box is given, else in
 * free air, else as a resistance. Refuses unknown drivers, wirings that do not fit the drivers, and impossible boxes.
 */
export function loadInBox(request: LoadImpedanceRequest): Outcome<LoadImpedanceSections> | Refusal {
  const { curve } = request
  const from = curve?.fromHz ?? 10
  const backwards =
    from < (curve?.toHz ?? 20_000) ? [] : [{ at: '/curve/toHz', message: `must be above fromHz, ${from} Hz` }]
  if (backwards.length > 0) return { faults: backwards }
  const frequencyHz = loadGrid(curve)
  const { impedances, faults } = impedancesOf(request, frequencyHz)
  const outcome = loadImpedance(request, impedances, frequencyHz)
  if ('faults' in outcome) return { faults: [...faults, ...outcome.faults] }
  return faults.length > 0 ? { faults } : outcome
}
