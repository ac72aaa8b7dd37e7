import { driverIdsOf, wiringText } from '../../core/load/wiring-parts.ts'
import { type Circuit, channelsOf, type Feed } from './circuit.ts'

const feedSaid = ({ voltageV, kind, fuseA, switchA, reservoirUf = 0, indicatorOhm }: Feed): string => {
  const inLine = [`a fuse of ${fuseA} A`, ...(switchA === null ? [] : [`a switch of ${switchA} A`])]
  const beside = [
    ...(reservoirUf === 0 ? [] : [`a reservoir of ${reservoirUf} uF`]),
    ...(indicatorOhm === null ? [] : [`an indicator with ${indicatorOhm} ohm`]),
  ]
  const across =
    beside.length === 0
      ? ''
      : `; from plus to minus ${beside.length === 1 ? 'lies' : 'lie'} ${beside.join(' and ')}`
  return `The supply, ${kind.replace('-', ' ')} of ${Number(voltageV.toPrecision(3))} V, feeds the amplifier through ${inLine.join(' and ')}${across}.`
}

const signalSaid = ({ volumeControl, inputCapacitorUf }: Circuit['signal']): string => {
  const way = [
    ...(volumeControl === undefined ? [] : [`a volume control of ${volumeControl.resistanceKohm} kohm`]),
    ...(inputCapacitorUf === undefined ? [] : [`a capacitor of ${inputCapacitorUf} uF`]),
  ]
  return way.length === 0
    ? 'The signal goes straight to the amplifier.'
    : `The signal of each channel goes through ${way.join(' and ')} to the amplifier.`
}

/** A nest in words longer than this tells nobody anything. */
const LONGEST_SAID = 400

const networkSaid = ({ wiring }: Circuit): string => {
  const said = wiringText(wiring)
  return said.length > LONGEST_SAID ? `a network of ${driverIdsOf(wiring).length} drivers` : said
}

/** The circuit in words, for those who do not see it. */
export function circuitSaid(circuit: Circuit): string {
  const { feed, boxes, outputCapacitorUf } = circuit
  const channels = channelsOf(circuit)
  const where = boxes === 1 ? 'in one box' : `in ${boxes} boxes`
  const each = channels === 1 ? 'The channel' : `Each of the ${channels} channels`
  const capacitor =
    outputCapacitorUf === null
      ? ''
      : `a capacitor of ${Number(outputCapacitorUf.toPrecision(3))} uF or more, then `
  return [
    ...(feed === null ? [] : [feedSaid(feed)]),
    signalSaid(circuit.signal),
    `${each}, ${where}, drives ${capacitor}${networkSaid(circuit)}.`,
  ].join(' ')
}
