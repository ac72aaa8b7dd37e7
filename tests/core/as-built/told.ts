import { asBuilt } from '../../../src/core/as-built/as-built.ts'
import { isRefusal, type Outcome } from '../../../src/core/outcome.ts'
import type { AsBuiltSections, MeasuredBox } from '../../../src/schema/as-built.ts'
import type { Design } from '../../../src/schema/design.ts'
import type { Reading } from '../../outside/as-built-boxes.ts'

/** A reading of the simulator as a request has it, with its phase or without. */
export const sweepOf = ({ frequencyHz, ohm, phaseDeg }: Reading, withPhase = true): MeasuredBox['sweep'] => ({
  frequencyHz,
  impedanceOhm: ohm,
  ...(withPhase && { phaseDeg }),
})

/** What is told of a plan and a reading; fails where they are refused. */
export function told(
  design: Design,
  reading: Reading,
  { withPhase = true, leadOhm = 0 } = {},
): Outcome<AsBuiltSections> {
  const result = asBuilt({ design, measured: { sweep: sweepOf(reading, withPhase), leadOhm } })
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  return result
}

export const codesOf = ({ findings }: Outcome<AsBuiltSections>): string[] => findings.map(({ code }) => code)
