import { MOST_TUBE_SHARE } from '../box/port-geometry.ts'
import { hertz, litre, mm } from '../say.ts'
import { mmApart, saidApart } from '../say-apart.ts'
import type { PortFacts } from './port-facts.ts'
import { leastLengthMm, longer, SHORTEST_MM, shorter } from './port-remedies.ts'
import { type Remedy, remedy, takeOut } from './remedy.ts'
import type { Rule } from './rule.ts'

const lengthOf = (facts: PortFacts): number => facts.lengthMm ?? 0
/** Free way from the inner end of the tube to the wall behind it, mm. */
const behindTubeMm = (facts: PortFacts): number =>
  (facts.insideDepthMm ?? 0) - (facts.reachMm - (facts.panelThicknessMm ?? 0))

// Pipe tones are plain where voices are: common practice, no source.
const VOICE_HZ = [200, 1500] as const

/** Edge of a cube of the air in the box, mm: no straight tube much longer than that goes in. */
const cubeEdgeMm = (facts: PortFacts): number => 100 * Math.cbrt(facts.netVolumeL)

/** As long as leaves a diameter free behind the tube; what a bent one reaches does not depend on its length. */
const shorterBehind = (facts: PortFacts): Remedy[] =>
  facts.hasBends
    ? ['Ask for a higher tuning.']
    : shorter(facts, (facts.insideDepthMm ?? 0) + (facts.panelThicknessMm ?? 0) - facts.diameterMm)

export const portRules: readonly Rule<PortFacts>[] = [
  {
    code: 'port-cannot-reach-tuning',
    severity: 'blocker',
    at: (facts) => `${facts.at}/tuningHz`,
    unit: 'Hz',
    when: (facts) => facts.lengthMm === null,
    value: (facts) => facts.tuningHz,
    limit: (facts) => facts.highestTuningHz,
    message: (facts) => {
      const [wanted, highest] = saidApart(facts.tuningHz, facts.highestTuningHz, 'Hz')
      return `No tube of this size tunes this box to ${wanted}: even the bare opening tunes it to ${highest}, and every length of tube lowers that.`
    },
    remedies: (facts) => [
      ...longer(facts, leastLengthMm(facts)),
      'Use a wider port, or more of them.',
      'Make the box smaller.',
    ],
  },
  {
    code: 'port-shorter-than-panel',
    severity: 'blocker',
    at: (facts) => `${facts.at}/lengthMm`,
    unit: 'mm',
    when: (facts) =>
      facts.lengthMm !== null && facts.panelThicknessMm !== null && facts.lengthMm < facts.panelThicknessMm,
    value: lengthOf,
    limit: (facts) => facts.panelThicknessMm ?? 0,
    message: (facts) => {
      const [long, thick] = mmApart(lengthOf(facts), facts.panelThicknessMm ?? 0)
      return `The port would be ${long} long, less than the panel of ${thick} it goes through.`
    },
    remedies: (facts) => [
      'Use a wider port: the length grows with its area.',
      ...longer(facts, leastLengthMm(facts)),
    ],
  },
  {
    code: 'port-does-not-fit',
    severity: 'blocker',
    at: (facts) => facts.at,
    unit: 'mm',
    when: (facts) => facts.lengthMm !== null && facts.insideDepthMm !== null && behindTubeMm(facts) <= 0,
    value: (facts) => facts.reachMm,
    limit: (facts) => (facts.insideDepthMm ?? 0) + (facts.panelThicknessMm ?? 0),
    message: (facts) =>
      `The port reaches ${mm(facts.reachMm)} from the front, but the box is ${mm(facts.insideDepthMm ?? 0)} deep inside, so the tube meets the wall behind it.`,
    remedies: (facts) => [
      'Use a narrower tube: the length shrinks with its area; watch the air speed.',
      ...shorterBehind(facts),
      'Bend the tube, keeping the same length along its middle.',
      'Make the box deeper.',
    ],
  },
  {
    code: 'port-near-wall',
    severity: 'warning',
    at: (facts) => facts.at,
    unit: 'mm',
    when: (facts) => {
      const behind = behindTubeMm(facts)
      return (
        facts.lengthMm !== null && facts.insideDepthMm !== null && behind > 0 && behind < facts.diameterMm
      )
    },
    value: behindTubeMm,
    limit: (facts) => facts.diameterMm,
    message: (facts) => {
      const [free, diameter] = mmApart(behindTubeMm(facts), facts.diameterMm)
      return `Behind the tube only ${free} stay free; with less than a diameter, ${diameter}, it tunes lower than calculated.`
    },
    remedies: (facts) => [
      'Bend the tube or use a narrower one.',
      ...shorterBehind(facts),
      'Make the box deeper.',
    ],
  },
  {
    code: 'bends-longer-than-port',
    severity: 'blocker',
    at: (facts) => `${facts.at}/elbows`,
    unit: 'mm',
    when: (facts) => facts.lengthMm !== null && facts.straightMm < 0,
    value: (facts) => lengthOf(facts) - facts.straightMm,
    limit: lengthOf,
    message: (facts) => {
      const [bends, whole] = mmApart(lengthOf(facts) - facts.straightMm, lengthOf(facts))
      return `The bends alone are ${bends} long, more than the ${whole} the port may have.`
    },
    remedies: (facts) => [
      remedy('Leave the bends out: a port this short needs none.', [takeOut(`${facts.at}/elbows`)]),
      'Use fewer or tighter bends.',
      'Use a wider tube, or a lower tuning: both make the port longer.',
    ],
  },
  {
    code: 'port-larger-than-box',
    severity: 'blocker',
    at: (facts) => facts.at,
    unit: 'L',
    when: (facts) => facts.tubeAirL > MOST_TUBE_SHARE * facts.netVolumeL,
    value: (facts) => facts.tubeAirL,
    limit: (facts) => MOST_TUBE_SHARE * facts.netVolumeL,
    message: (facts) =>
      `The port alone would hold ${litre(facts.tubeAirL)}, more than half of the ${litre(facts.netVolumeL)} in the box: that is no longer a box with a port.`,
    remedies: (facts) => [
      'Use a narrower tube: length and volume shrink with its area.',
      ...shorter(facts, (lengthOf(facts) * MOST_TUBE_SHARE * facts.netVolumeL) / facts.tubeAirL),
      'Use a larger box.',
    ],
  },
  {
    code: 'port-long-for-box',
    severity: 'warning',
    at: (facts) => facts.at,
    unit: 'mm',
    when: (facts) =>
      facts.insideDepthMm === null &&
      lengthOf(facts) > cubeEdgeMm(facts) &&
      facts.tubeAirL <= MOST_TUBE_SHARE * facts.netVolumeL,
    value: lengthOf,
    limit: cubeEdgeMm,
    message: (facts) => {
      const [long, wide] = mmApart(lengthOf(facts), cubeEdgeMm(facts))
      return `The port would be ${long} long; a cube of this volume is only ${wide} wide.`
    },
    remedies: (facts) => [
      'Bend the tube, keeping its length along the middle.',
      'Use a narrower tube.',
      ...shorter(facts, cubeEdgeMm(facts)),
    ],
  },
  {
    code: 'port-is-a-hole',
    severity: 'note',
    at: (facts) => facts.at,
    unit: 'mm',
    when: (facts) =>
      facts.panelThicknessMm === null && facts.lengthMm !== null && facts.lengthMm < SHORTEST_MM,
    value: lengthOf,
    limit: () => SHORTEST_MM,
    message: (facts) =>
      `The port would be only ${mm(lengthOf(facts))} long; the panel it goes through is thicker.`,
    remedies: (facts) => ['Use a wider port, which gets longer.', ...longer(facts, SHORTEST_MM)],
  },
  {
    code: 'port-pipe-resonance-low',
    severity: 'note',
    at: (facts) => facts.at,
    unit: 'Hz',
    when: ({ pipeResonanceHz }) =>
      pipeResonanceHz !== null && pipeResonanceHz >= VOICE_HZ[0] && pipeResonanceHz < VOICE_HZ[1],
    value: (facts) => facts.pipeResonanceHz ?? 0,
    limit: () => VOICE_HZ[1],
    message: (facts) =>
      `The tube sounds as a pipe at ${hertz(facts.pipeResonanceHz ?? 0)}, where voices are.`,
    remedies: () => [
      'Put the port on the back of the box.',
      'Line the wall opposite its inner end.',
      'Use a shorter tube.',
    ],
  },
]
