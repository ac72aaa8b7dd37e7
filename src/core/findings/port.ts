import { hertz, mm } from '../say.ts'
import type { Rule } from './rule.ts'

export interface PortFacts {
  /** Pointer to the port in the request, empty when its fields stand at the top level. */
  at: string
  tuningHz: number
  lengthMm: number | null
  highestTuningHz: number
  pipeResonanceHz: number | null
  panelThicknessMm: number | null
  insideDepthMm: number | null
  diameterMm: number
}

const lengthOf = (facts: PortFacts): number => facts.lengthMm ?? 0
/** Free way from the inner end of the tube to the wall behind it, mm. */
const behindTubeMm = (facts: PortFacts): number =>
  (facts.insideDepthMm ?? 0) - (lengthOf(facts) - (facts.panelThicknessMm ?? 0))

export const portRules: readonly Rule<PortFacts>[] = [
  {
    code: 'port-cannot-reach-tuning',
    severity: 'blocker',
    at: (facts) => `${facts.at}/tuningHz`,
    unit: 'Hz',
    when: (facts) => facts.lengthMm === null,
    value: (facts) => facts.tuningHz,
    limit: (facts) => facts.highestTuningHz,
    message: (facts) =>
      `No tube of this size tunes this box to ${hertz(facts.tuningHz)}: even the bare opening tunes it to ${hertz(facts.highestTuningHz)}, and every length of tube lowers that.`,
    remedies: (facts) => [
      `Ask for ${hertz(facts.highestTuningHz)} or less.`,
      'Use a wider tube, or more tubes.',
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
    message: (facts) =>
      `The port would be ${mm(lengthOf(facts))} long, less than the panel of ${mm(facts.panelThicknessMm ?? 0)} it goes through.`,
    remedies: () => ['Use a wider tube: the length grows with its area.', 'Ask for a lower tuning.'],
  },
  {
    code: 'port-does-not-fit',
    severity: 'blocker',
    at: (facts) => facts.at,
    unit: 'mm',
    when: (facts) => facts.lengthMm !== null && facts.insideDepthMm !== null && behindTubeMm(facts) <= 0,
    value: lengthOf,
    limit: (facts) => (facts.insideDepthMm ?? 0) + (facts.panelThicknessMm ?? 0),
    message: (facts) =>
      `A straight port of ${mm(lengthOf(facts))} does not fit: the box is ${mm(facts.insideDepthMm ?? 0)} deep inside, so the tube meets the wall behind it.`,
    remedies: () => [
      'Use a narrower tube: the length shrinks with its area; watch the air speed.',
      'Ask for a higher tuning.',
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
    message: (facts) =>
      `Behind the tube only ${mm(behindTubeMm(facts))} stay free; with less than a diameter, ${mm(facts.diameterMm)}, it tunes lower than calculated.`,
    remedies: () => ['Bend the tube or use a narrower one.', 'Make the box deeper.'],
  },
  {
    code: 'port-pipe-resonance-low',
    severity: 'note',
    at: (facts) => facts.at,
    unit: 'Hz',
    when: (facts) => facts.pipeResonanceHz !== null && facts.pipeResonanceHz < 1500,
    value: (facts) => facts.pipeResonanceHz ?? 0,
    limit: () => 1500,
    message: (facts) =>
      `The tube sounds as a pipe at ${hertz(facts.pipeResonanceHz ?? 0)}, where voices are.`,
    remedies: () => [
      'Put the port on the back of the box.',
      'Line the wall opposite its inner end.',
      'Use a shorter tube.',
    ],
  },
]
