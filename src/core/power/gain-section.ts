import type { Assumption } from '../../schema/frame.ts'
import type { Amplifier, Signal } from '../../schema/power.ts'
import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import { assumedWhen, type BudgetInput } from './budget-input.ts'
import { cornerHz, couplingResistanceOhm } from './coupling.ts'
import { CONSUMER_LINE_V, gainStructure } from './gain.ts'
import { attenuationDb, controlGain, type LoadedControl } from './volume.ts'

/** Usual gain, dB, and input resistance, kohm, of small boards. Common practice, no source. */
export const USUAL_GAIN_DB = 26
const USUAL_INPUT_KOHM = 20
const KNOB_OPEN = 1
const POSITIONS = [0.1, 0.25, 0.5, 0.75, 0.9, KNOB_OPEN]

const WIRING =
  'Top of the track to the source, wiper to the amplifier input, bottom to audio ground, both sections alike; the metal body to ground if it hums when touched.'

/** Input resistance of the amplifier, ohm, as given or as usual. */
export const inputResistanceOhmOf = ({ inputResistanceKohm = USUAL_INPUT_KOHM }: Amplifier): number =>
  1000 * inputResistanceKohm

/** From the source to the output; null when no signal is described. */
export function gainSection(
  { amplifier, source }: BudgetInput,
  signal: Signal | undefined,
): PowerBudgetSections['gain'] {
  if (signal === undefined) return null
  const inputResistanceOhm = inputResistanceOhmOf(amplifier)
  const control = controlOf(signal, inputResistanceOhm)
  const open =
    control === undefined
      ? inputResistanceOhm / (inputResistanceOhm + (signal.sourceResistanceOhm ?? 0))
      : controlGain(control, KNOB_OPEN)
  const levels = gainStructure(
    (signal.sourceLevelV ?? CONSUMER_LINE_V) * open,
    amplifier.gainDb ?? USUAL_GAIN_DB,
    source.voltageV,
    amplifier,
  )
  return {
    clipAtSourceV: levels.sourceForClipV / open,
    overdriveDb: levels.overdriveDb,
    outputV: levels.outputV,
    couplingCornerHz:
      signal.inputCapacitorUf === undefined
        ? null
        : cornerHz(signal.inputCapacitorUf, couplingOhmOf(amplifier, signal)),
    volume:
      control === undefined
        ? null
        : {
            positions: [...POSITIONS],
            attenuationDb: POSITIONS.map((turn) => attenuationDb(control, turn)),
            wiring: WIRING,
          },
  }
}

/** Resistance that the coupling capacitor works into with the knob open, ohm. */
export function couplingOhmOf(amplifier: Amplifier, signal: Signal): number {
  const inputResistanceOhm = inputResistanceOhmOf(amplifier)
  const control = controlOf(signal, inputResistanceOhm)
  return control === undefined
    ? inputResistanceOhm + (signal.sourceResistanceOhm ?? 0)
    : couplingResistanceOhm(control, KNOB_OPEN, 'after-wiper')
}

function controlOf(
  { volumeControl, sourceResistanceOhm = 0 }: Signal,
  inputResistanceOhm: number,
): LoadedControl | undefined {
  if (volumeControl === undefined) return undefined
  return {
    resistanceOhm: 1000 * volumeControl.resistanceKohm,
    taper: volumeControl.taper ?? 'audio',
    inputResistanceOhm,
    sourceResistanceOhm,
  }
}

/** What was filled in of the signal chain. */
export function gainAssumptions(amplifier: Amplifier, signal: Signal | undefined): Assumption[] {
  if (signal === undefined) return []
  return [
    ...assumedWhen(
      signal.sourceLevelV === undefined,
      '/signal/sourceLevelV',
      CONSUMER_LINE_V,
      'V',
      'consumer line level, -10 dBV',
    ),
    ...assumedWhen(
      signal.sourceResistanceOhm === undefined,
      '/signal/sourceResistanceOhm',
      0,
      'ohm',
      'small against the volume control',
    ),
    ...assumedWhen(
      signal.volumeControl !== undefined && signal.volumeControl.taper === undefined,
      '/signal/volumeControl/taper',
      'audio',
      '',
      'usual law of a volume control',
    ),
    ...assumedWhen(amplifier.gainDb === undefined, '/amplifier/gainDb', USUAL_GAIN_DB, 'dB', 'usual gain'),
    ...assumedWhen(
      amplifier.inputResistanceKohm === undefined,
      '/amplifier/inputResistanceKohm',
      USUAL_INPUT_KOHM,
      'kohm',
      'usual input resistance of small boards',
    ),
  ]
}
