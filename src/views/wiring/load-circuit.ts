import { countedDrivers, wiringOf } from '../../core/load/given-wiring.ts'
import type { LoadImpedanceRequest } from '../../schema/load-impedance.ts'
import { svgOf } from '../drawing/svg.ts'
import { wiringDrawing } from './wiring-drawing.ts'

/** One channel on its amplifier, of which little more is known; null where its wiring cannot be told. */
export function loadWiringSvg(request: LoadImpedanceRequest): string | null {
  const wired = wiringOf(request, undefined)
  if ('faults' in wired) return null
  const { wiring } = wired
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
