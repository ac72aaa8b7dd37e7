import type { BoxTuningRequest } from '../../schema/box-tuning.ts'
import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { Fault, Outcome, Refusal } from '../outcome.ts'
import { analyse } from './analyse.ts'
import { assemble, type BoxInput } from './assemble.ts'
import { groupOf } from './loudspeaker.ts'

const USUAL_DRIVE_V = 2.83

function inputOf(request: BoxTuningRequest): BoxInput {
  const count = request.driverCount ?? 1
  return {
    driver: request.driver,
    driverAt: '/driver',
    group: groupOf(count, request.driverWiring ?? 'parallel'),
    // With the volume given outright no body is taken off; else the frame, when there is one, says how big it is.
    bodies: [{ at: '', count, frame: request.frame }],
    box: request.box,
    port: request.port,
    passiveRadiator: request.passiveRadiator,
    sourceResistanceOhm: request.drive?.sourceResistanceOhm ?? 0,
    air: request.air,
    space: request.space ?? 'half',
  }
}

function spacingFaults({ driverSpacingMm, driverCount = 1, driver }: BoxTuningRequest): Fault[] {
  if (driverSpacingMm === undefined) return []
  const at = '/driverSpacingMm'
  if (driverCount < 2)
    return [{ at, message: 'one driver has no neighbour; give driverCount, or leave it out' }]
  // Sd is a circle as wide as the cone.
  const coneMm = 20 * Math.sqrt((driver.sdCm2 ?? 0) / Math.PI)
  return driverSpacingMm < coneMm
    ? [{ at, message: `the cones would overlap; at least ${Math.ceil(coneMm)} mm` }]
    : []
}

function curveFaults(request: BoxTuningRequest): Fault[] {
  const from = request.curve?.fromHz ?? 20
  return from < (request.curve?.toHz ?? 20_000)
    ? []
    : [{ at: '/curve/toHz', message: `must be above fromHz, ${from} Hz` }]
}

/**
 * `/v1/box-tuning`: one kind of driver in its box, from the whole circuit.
 * Refuses a driver too incomplete to decide the result and boxes that cannot be; every fault at once.
 */
export function boxTuning(request: BoxTuningRequest): Outcome<BoxTuningSections> | Refusal {
  const input = inputOf(request)
  const assembled = assemble(input)
  const faults = [
    ...('faults' in assembled ? assembled.faults : []),
    ...curveFaults(request),
    ...spacingFaults(request),
  ]
  if ('faults' in assembled || faults.length > 0) return { faults }
  const voltageV = request.drive?.voltageV ?? USUAL_DRIVE_V
  const drive: Assumption[] =
    request.drive?.voltageV === undefined
      ? [
          {
            at: '/drive/voltageV',
            value: USUAL_DRIVE_V,
            unit: 'V',
            why: 'the usual level for comparison: 1 W in 8 ohm',
          },
        ]
      : []
  const outcome = analyse(input, assembled, {
    voltageV,
    drive: { at: '/drive/voltageV', given: request.drive !== undefined },
    lowestHz: null,
    curve: request.curve,
    fitJudged: false,
    powerJudged: false,
    tubes: request.tubes ?? [],
    wantedQtc: request.wantedQtc ?? null,
    spacingMm: request.driverSpacingMm ?? null,
  })
  return { ...outcome, assumptions: [...drive, ...outcome.assumptions] }
}
