import { SWING } from './amplifier.ts'
import type { BudgetInput } from './budget-input.ts'
import { capacitorForCornerUf } from './coupling.ts'

/** The lowest note when none is wanted in particular, Hz. Common practice, no source. */
export const USUAL_LOWEST_HZ = 40

/** Direct voltage an output rests at, V, and the least capacitor that keeps it from the load, uF; null for a bridge. */
export interface OutputCapacitor {
  outputDcV: number | null
  outputCapacitorUf: number | null
}

/**
 * What a single-ended output on one supply does to the load without a signal, and the capacitor against it.
 * The output rests in the middle of its swing, half the supply; C = 1/(2π R f) is 3 dB down at the lowest note.
 * Source: first-order high-pass; that a single-ended output needs it is common practice.
 */
export function outputCapacitor({ amplifier, source, loadOhm, lowestNoteHz }: BudgetInput): OutputCapacitor {
  return amplifier.output === 'bridge'
    ? { outputDcV: null, outputCapacitorUf: null }
    : {
        outputDcV: SWING['single-ended'] * source.voltageV,
        outputCapacitorUf: capacitorForCornerUf(lowestNoteHz, loadOhm),
      }
}
