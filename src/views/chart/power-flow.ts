import { ampere, ohm, say, volt, watt } from '../../core/say.ts'
import type { Amplifier, Supply } from '../../schema/power.ts'
import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import { type EnergyFlow, energyFlow } from './energy-flow.ts'
import { branch, type FlowBand, flowBands } from './flow-bands.ts'
import { headOf, type Named, picture, textAt, titled } from './picture.ts'

/** What the request says of the chain. */
export interface Chain extends Named {
  amplifier: Pick<Amplifier, 'channels'>
  supply: Pick<Supply, 'kind'>
}

type Sections = Pick<PowerBudgetSections, 'power' | 'supply'>

const SOURCE_SAID = {
  'computer-port': 'Computer port',
  charger: 'Charger',
  'power-bank': 'Power bank',
  adapter: 'Adapter',
  cells: 'Cells',
} satisfies Record<Supply['kind'], string>

const USUAL_CHANNELS = 2
const STATION_X = [20, 180, 340, 520] as const
const STATIONS_HEIGHT = 44
const BAND_HEIGHT = 96
const LOSSES_HEIGHT = 92

/** From the source through lead and board to the loads: volts at each station, watts that go on and that are lost. */
export function powerFlowPicture(sections: Sections, chain: Chain): string {
  const channels = chain.amplifier.channels ?? USUAL_CHANNELS
  const flow = energyFlow(sections, channels)
  const heading = {
    id: 'power-flow',
    title: titled('Where the power goes', chain),
    says: flow === null ? notDelivered(sections) : flowSaid(sections, flow),
  } as const
  const head = headOf(heading)
  const top = head.bottom + 22
  const stations = stationsOf(sections, flow, SOURCE_SAID[chain.supply.kind], channels)
  const names = stations.flatMap(({ name, state }, index) => [
    textAt(STATION_X[index] ?? 0, top, name, { kind: 'strong' }),
    textAt(STATION_X[index] ?? 0, top + 16, state, { kind: 'quiet' }),
  ])
  const bandTop = top + STATIONS_HEIGHT
  if (flow === null) return picture(heading, bandTop, [head.drawn, ...names])
  return picture(heading, bandTop + BAND_HEIGHT + LOSSES_HEIGHT, [
    head.drawn,
    ...names,
    ...drawnFlow(flow, bandTop),
  ])
}

function stationsOf({ supply, power }: Sections, flow: EnergyFlow | null, source: string, channels: number) {
  const left = supply.boardVoltageV
  return [
    {
      name: source,
      state: flow === null ? volt(supply.voltageV) : `${volt(supply.voltageV)}, ${ampere(flow.currentA)}`,
    },
    { name: 'Lead', state: ohm(supply.cableOhm) },
    { name: 'Board', state: left === null ? 'voltage collapses' : volt(left) },
    {
      name: channels === 1 ? 'Load' : `${channels} loads`,
      state: `peaks ${volt(power.cleanVoltageV * Math.SQRT2)}`,
    },
  ]
}

/** The bands with the watts in them; each loss turns down out of the band and names itself below. */
function drawnFlow(flow: EnergyFlow, top: number): string[] {
  const losses = [
    { x: 190, watts: flow.leadW, text: 'warms the lead' },
    { x: 350, watts: flow.idleW, text: 'idling and lamp' },
    { x: 505, watts: flow.outputHeatW, text: 'warms the board' },
  ]
  const shape = { left: STATION_X[0], right: 620, top, fullHeight: BAND_HEIGHT, fullW: flow.sourceW }
  const { main, branches } = flowBands(losses, shape)
  const foot = top + BAND_HEIGHT + 34
  return [
    `<path class="flow" d="${main}"/>`,
    ...branches.map((band) => `<path class="lost" d="${branch(band, foot)}"/>`),
    ...branches.flatMap((band, index) =>
      lossText(band, losses[index]?.watts ?? 0, losses[index]?.text ?? '', foot),
    ),
    ...wattTexts(flow, top),
  ]
}

const lossText = ({ middle }: FlowBand, watts: number, text: string, foot: number): string[] => [
  textAt(middle, foot + 22, power(watts), { kind: 'strong', anchor: 'middle' }),
  textAt(middle, foot + 38, text, { kind: 'quiet', anchor: 'middle' }),
]

const wattTexts = ({ sourceW, boardW, loadsW }: EnergyFlow, top: number): string[] =>
  [sourceW, boardW, loadsW].map((watts, index) =>
    textAt([STATION_X[0], STATION_X[2], STATION_X[3]][index] ?? 0, top - 6, power(watts), { kind: 'strong' }),
  )

const power = (watts: number): string => (watts < 0.1 ? say(watts * 1000, 'mW') : watt(watts))

const notDelivered = ({ supply }: Sections) =>
  [
    `The lead of ${ohm(supply.cableOhm)} cannot deliver what full volume takes: the voltage at the board collapses.`,
  ] as const

function flowSaid({ supply }: Sections, { sourceW, leadW, idleW, outputHeatW, loadsW }: EnergyFlow) {
  const share = sourceW === 0 ? 0 : Math.round((100 * loadsW) / sourceW)
  return [
    `At full volume the source gives ${power(sourceW)} on average; the loads get ${power(loadsW)} of it, ${share} %.`,
    `The lead loses ${power(leadW)}, idling takes ${power(idleW)}, the board warms with ${power(outputHeatW)}.`,
    `The source holds ${volt(supply.voltageV)}, ${volt(supply.boardVoltageV ?? 0)} of it arrive at the board.`,
  ] as const
}
