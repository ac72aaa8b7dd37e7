import { ampere, decibel, hertz, litre, mm, ohm, volt, watt } from '../../core/say.ts'
import type { Design } from '../../schema/design.ts'
import type { DesignCheckSections } from '../../schema/design-check.ts'
import { figure } from '../drawing/figures.ts'
import type { Section } from './block.ts'

type Row = [what: string, figures: string]

function sidesSaid({ box, boxes = 1 }: Design): string {
  const count = boxes === 1 ? 'one' : `${boxes}`
  if (box.outer === undefined) return `${count}, ${box.kind}`
  const { widthMm, heightMm, depthMm } = box.outer
  return `${count}, ${box.kind}, ${figure(widthMm)} mm wide, ${figure(heightMm)} mm high, ${figure(depthMm)} mm deep outside`
}

function tuningSaid({ fbHz, fcHz, qtc, f3Hz }: DesignCheckSections['tuning']): string {
  const tuned = fbHz === undefined ? [] : [`tuned to ${hertz(fbHz)}`]
  const closed =
    fcHz === undefined ? [] : [`resonance ${hertz(fcHz)}${qtc === undefined ? '' : `, Q ${qtc.toFixed(2)}`}`]
  return [...tuned, ...closed, ...(f3Hz === null ? [] : [`3 dB down at ${hertz(f3Hz)}`])].join(', ')
}

function portRow({ port }: DesignCheckSections, { port: given }: Design): Row[] {
  if (port === null || port.lengthMm === null) return []
  const count = given?.count ?? 1
  const inside = given?.innerDiameterMm === undefined ? '' : `, ${mm(given.innerDiameterMm)} inside`
  return [['Port', `${count === 1 ? '' : `${count} times `}${mm(port.lengthMm)} long${inside}`]]
}

function loadSaid({ load }: DesignCheckSections): string {
  const meter = load.meterOhm === null ? 'open on a meter' : `${ohm(load.meterOhm)} on a meter`
  return `${meter}, at least ${ohm(load.minimumOhm)} to the amplifier`
}

function levelSaid({ loudness, limits }: DesignCheckSections): string {
  const most = `at most ${decibel(limits.maximumSplDb)} at 1 m before something gives`
  return loudness === null || loudness.programmeDb === null
    ? most
    : `${decibel(loudness.programmeDb)} on average at ${loudness.distanceM} m; ${most}`
}

/** The build on a few lines, to compare with what lies on the bench. */
export function figuresSection(checked: DesignCheckSections, design: Design): Section {
  const { tuning, power, supply } = checked
  const rows: Row[] = [
    ['Boxes', sidesSaid(design)],
    ['Air inside', `${litre(tuning.netVolumeL)}, ${tuningSaid(tuning)}`],
    ...portRow(checked, design),
    ['Load of a channel', loadSaid(checked)],
    ['Power of a channel', `${watt(power.cleanPowerW)} clean, ${watt(power.programmePowerW)} on average`],
    [
      'Source',
      `${volt(supply.voltageV)}, ${ampere(supply.programmeA)} with music, ${ampere(supply.sineA)} with a full test tone`,
    ],
    ['How loud', levelSaid(checked)],
  ]
  return {
    heading: 'The build in figures',
    blocks: [
      {
        kind: 'table',
        columns: [
          { title: 'What', share: 0.22 },
          { title: 'How much', share: 0.78 },
        ],
        rows,
      },
    ],
  }
}
