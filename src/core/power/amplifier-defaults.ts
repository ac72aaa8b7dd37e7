import type { Assumption } from '../../schema/frame.ts'
import type { Amplifier } from '../../schema/power.ts'

/** Common practice, no source, except where the reason says more. */
const DEFAULTS = {
  channels: { value: 2, unit: '', why: 'two channels are usual' },
  output: { value: 'bridge', unit: '', why: 'small class-D boards are bridges' },
  minimumLoadOhm: { value: 4, unit: 'ohm', why: 'the usual lowest rated load of small boards' },
  outputResistanceOhm: {
    value: 0.4,
    unit: 'ohm',
    why: 'two switches of 0.15 ohm and two coils of 0.05 ohm, common practice',
  },
  largestDuty: { value: 1, unit: '', why: 'the output is taken to reach the supply' },
  efficiency: { value: 0.85, unit: '', why: 'usual class-D efficiency at full power' },
  quiescentCurrentMa: { value: 20, unit: 'mA', why: 'small boards with drivers idle at 13 to 30 mA' },
} as const

type Filled = keyof typeof DEFAULTS

const FILLED = Object.entries(DEFAULTS).map(([name, { value, unit, why }]) => ({
  name,
  assumption: { at: `/amplifier/${name}`, value, unit, why },
}))

/** An amplifier in which everything that can be assumed is filled in. */
export type CompleteAmplifier = Amplifier & Required<Pick<Amplifier, Filled>>

/**
 * Fills in what is usual for a small class-D board and says so.
 * @returns the amplifier and one assumption for each value that was not given
 */
export function completeAmplifier(amplifier: Amplifier): {
  amplifier: CompleteAmplifier
  assumptions: Assumption[]
} {
  const complete: CompleteAmplifier = {
    channels: amplifier.channels ?? DEFAULTS.channels.value,
    output: amplifier.output ?? DEFAULTS.output.value,
    minimumLoadOhm: amplifier.minimumLoadOhm ?? DEFAULTS.minimumLoadOhm.value,
    outputResistanceOhm: amplifier.outputResistanceOhm ?? DEFAULTS.outputResistanceOhm.value,
    largestDuty: amplifier.largestDuty ?? DEFAULTS.largestDuty.value,
    efficiency: amplifier.efficiency ?? DEFAULTS.efficiency.value,
    quiescentCurrentMa: amplifier.quiescentCurrentMa ?? DEFAULTS.quiescentCurrentMa.value,
    ...amplifier,
  }
  const assumptions = FILLED.filter(({ name }) => !(name in amplifier)).map(({ assumption }) => assumption)
  return { amplifier: complete, assumptions }
}
