import { readdirSync, readFileSync } from 'node:fs'
import { validatorOf } from '../../../src/api/validator.ts'
import { boxTuning } from '../../../src/core/box/box-tuning.ts'
import { port } from '../../../src/core/box/port.ts'
import { designCheck } from '../../../src/core/design/design-check.ts'
import { loadInBox } from '../../../src/core/design/load-in-box.ts'
import { isRefusal, type Outcome, type Refusal } from '../../../src/core/outcome.ts'
import { powerBudget } from '../../../src/core/power/power-budget.ts'
import { BoxTuningRequest } from '../../../src/schema/box-tuning.ts'
import { Design } from '../../../src/schema/design.ts'
import type { Finding } from '../../../src/schema/frame.ts'
import { LoadImpedanceRequest } from '../../../src/schema/load-impedance.ts'
import { PortRequest } from '../../../src/schema/port-calculation.ts'
import { PowerBudgetRequest } from '../../../src/schema/power-budget.ts'
import {
  type Bend,
  BOX_BENDS,
  DRIVER_BENDS,
  PORT_BENDS,
  POWER_BENDS,
  WIRING_BENDS,
} from '../../outside/bent-requests.ts'

const FOLDER = new URL('../../designs/', import.meta.url)
const DESIGNS: Design[] = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.json'))
  .map((name) => JSON.parse(readFileSync(new URL(name, FOLDER), 'utf8')))

/** A calculation as the check sees it: anything in, findings out; undefined where it refuses. */
export interface Calculation {
  name: string
  fits: (request: unknown) => boolean
  schema: object
  findings: (request: unknown) => Finding[] | undefined
  bases: unknown[]
  bends: Bend[]
  rounds: number
}

function calculation<Request>(
  name: string,
  schema: Parameters<typeof validatorOf>[0],
  compute: (request: Request) => Outcome<unknown> | Refusal,
  rest: Pick<Calculation, 'bases' | 'bends' | 'rounds'>,
): Calculation {
  const fits = validatorOf(schema)
  return {
    name,
    fits: (request) => fits(request),
    schema,
    findings: (request) => {
      if (!fits(request)) return undefined
      const outcome = compute(request as Request)
      return isRefusal(outcome) ? undefined : outcome.findings
    },
    ...rest,
  }
}

const onDriver =
  (bend: Bend): Bend =>
  (request, draw) =>
    bend(request.drivers[0].parameters, draw)
const first = ({ drivers }: Design) => drivers[0]?.parameters

/** A design of which no sides are known, only the air inside. */
function volumeOnly(design: Design): Design {
  const { outer: _, ...box } = design.box
  return { ...design, box: { ...box, netVolumeL: 2.5 } }
}

const TWO_WAY: LoadImpedanceRequest = {
  drivers: [
    { id: 'woofer', parameters: { reOhm: 6 } },
    { id: 'tweeter', sharesBox: false, parameters: { reOhm: 6, fsHz: 1500 } },
  ],
  crossover: { cornerHz: 2500 },
  amplifier: {},
}

/** Half an ampere through 3 m of thin lead: 0.2 V of it and more are lost. */
const LONG_LEAD: PowerBudgetRequest = {
  amplifier: { supplyVoltageV: 5, minimumSupplyV: 4.6 },
  supply: { kind: 'computer-port', cable: { lengthM: 3, gaugeAwg: 28 } },
  programme: 'compressed-music',
}

const THREE_CELLS: PowerBudgetRequest = {
  amplifier: { supplyVoltageV: 12, minimumSupplyV: 9.5, maximumSupplyV: 20 },
  supply: { kind: 'cells', cellsInSeries: 3 },
}

export const CALCULATIONS: Calculation[] = [
  calculation('design-check', Design, designCheck, {
    bases: [...DESIGNS, ...DESIGNS.slice(0, 1).map(volumeOnly)],
    bends: [...BOX_BENDS, ...DRIVER_BENDS.map(onDriver), ...POWER_BENDS, ...WIRING_BENDS],
    rounds: 60,
  }),
  calculation('box-tuning', BoxTuningRequest, boxTuning, {
    bases: DESIGNS.map((design) => ({
      driver: first(design),
      box: design.box,
      ...(design.port && { port: design.port }),
    })),
    bends: [
      ...BOX_BENDS,
      ...DRIVER_BENDS.map(
        (bend): Bend =>
          (request, draw) =>
            bend(request.driver, draw),
      ),
      (request, { from }) => {
        request.drive = { voltageV: from(1, 20) }
      },
      (request) => {
        request.drive = { sourceResistanceOhm: 0.2 }
      },
    ],
    rounds: 200,
  }),
  calculation('port', PortRequest, port, {
    bases: [{ netVolumeL: 2.5, innerDiameterMm: 26, tuningHz: 95 }],
    bends: [
      ...PORT_BENDS,
      (request, { from }) => {
        request.netVolumeL = from(0.1, 40)
      },
    ],
    rounds: 150,
  }),
  calculation('load-impedance', LoadImpedanceRequest, loadInBox, {
    bases: [
      ...DESIGNS.map(({ drivers, wiring, amplifier }) => ({
        drivers,
        amplifier,
        ...(wiring && { wiring }),
      })),
      TWO_WAY,
    ],
    bends: [
      ...DRIVER_BENDS.map(onDriver),
      ...WIRING_BENDS,
      (request, { from }) => {
        request.leadOhm = from(0.1, 5)
      },
      ({ amplifier }, { one }) => {
        amplifier.minimumLoadOhm = one([2, 4, 6, 8])
      },
      (request, { from, one }) => {
        request.crossover = { cornerHz: from(200, 5000), order: one([1, 2]) }
      },
    ],
    rounds: 100,
  }),
  calculation('power-budget', PowerBudgetRequest, powerBudget, {
    bases: [
      ...DESIGNS.map(({ amplifier, supply, signal, wants }) => ({
        amplifier,
        supply,
        loadOhm: 8,
        sensitivity1WDb: 84,
        ...(signal && { signal }),
        ...(wants && { wants }),
      })),
      THREE_CELLS,
      LONG_LEAD,
    ],
    bends: POWER_BENDS,
    rounds: 400,
  }),
]
