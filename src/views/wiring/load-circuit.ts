import { crossoverWiring } from '../../core/load/crossover-wiring.ts'
import { countedDrivers, wiringOf } from '../../core/load/given-wiring.ts'
import type { LoadImpedanceRequest, LoadImpedanceSections } from '../../schema/load-impedance.ts'
import type { Wiring } from '../../schema/wiring.ts'
import { svgOf } from '../drawing/svg.ts'
import { wiringDrawing } from './wiring-drawing.ts'

type Answered = Pick<LoadImpedanceSections, 'crossover'>

/** The wiring that the answer is about: given, the only one there is, or through the crossover with the parts it tells. */
function wiringOfAnswer(request: LoadImpedanceRequest, { crossover }: Answered): Wiring | undefined {
  const { wiring, drivers } = request
  const wished =
    wiring === undefined && request.crossover !== undefined
      ? crossoverWiring(drivers, request.crossover, crossover)
      : undefined
  if (wished !== undefined) return wished
  const wired = wiringOf(request, undefined)
  return 'faults' in wired ? undefined : wired.wiring
}

/** One channel on its amplifier, of which little more is known; null where its wiring cannot be told. */
export function loadWiringSvg(answer: Answered, request: LoadImpedanceRequest): string | null {
  const wiring = wiringOfAnswer(request, answer)
  if (wiring === undefined) return null
  const drawing = wiringDrawing({
    drivers: countedDrivers({ ...request, wiring, amplifier: { ...request.amplifier, channels: 1 } }),
    wiring,
    boxes: 1,
    channelsPerBox: 1,
    amplifier: request.amplifier ?? {},
    outputCapacitorUf: null,
    feed: null,
    signal: {},
  })
  return svgOf(drawing, 'wiring')
}
