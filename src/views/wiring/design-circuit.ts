import { channelPlan } from '../../core/design/channel-plan.ts'
import type { Design } from '../../schema/design.ts'
import type { DesignCheckSections } from '../../schema/design-check.ts'
import { svgOf } from '../drawing/svg.ts'
import type { Circuit, Feed } from './circuit.ts'
import { wiringDrawing } from './wiring-drawing.ts'

type Checked = Pick<DesignCheckSections, 'supply' | 'reservoir' | 'indicator' | 'power' | 'load'>

function feedOf({ supply: found, reservoir, indicator }: Checked, { supply }: Design): Feed {
  const { kind, cellsInSeries, cable, reservoirUf, inrushLimiterOhm, switchRatedA } = supply
  return {
    kind,
    ...(cellsInSeries !== undefined && { cellsInSeries }),
    ...(cable !== undefined && { cable }),
    ...(reservoirUf !== undefined && { reservoirUf }),
    ...(inrushLimiterOhm !== undefined && { inrushLimiterOhm }),
    voltageV: found.voltageV,
    fuseA: found.fuseA,
    switchA: switchRatedA === undefined ? null : found.switchA,
    indicatorOhm: indicator?.resistorOhm ?? null,
    keepAliveOhm: found.keepAliveOhm,
    reservoirRatingV: reservoir?.leastRatingV ?? null,
  }
}

/** The circuit of a design as its answer completes it: wiring that was left out, fuse, resistors, ratings. */
export function designCircuit(checked: Checked, design: Design): Circuit | null {
  const plan = channelPlan(design)
  if ('faults' in plan) return null
  const { amplifier, signal = {} } = design
  const needsCapacitor = amplifier.outputCapacitorFitted !== true && checked.load.meterOhm !== null
  return {
    name: design.name,
    drivers: design.drivers,
    wiring: plan.wiring,
    boxes: design.boxes ?? 1,
    channelsPerBox: plan.channelsPerBox,
    amplifier: { ...amplifier, output: amplifier.output ?? 'bridge' },
    outputCapacitorUf: needsCapacitor ? checked.power.outputCapacitorUf : null,
    feed: feedOf(checked, design),
    signal,
  }
}

/** The wiring diagram of a design; null where its wiring cannot be told. */
export function designWiringSvg(checked: Checked, design: Design): string | null {
  const circuit = designCircuit(checked, design)
  return circuit === null ? null : svgOf(wiringDrawing(circuit), 'wiring')
}
