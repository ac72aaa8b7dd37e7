import type { Design } from '../../schema/design.ts'
import type { Finding } from '../../schema/frame.ts'
import type { Loudspeaker } from '../box/loudspeaker.ts'
import { completeDriver } from '../driver/complete.ts'
import { GUESS_FACTOR } from '../driver/typical.ts'
import { guessedDriverRules, type Span } from '../findings/driver-guess.ts'
import { apply } from '../findings/rule.ts'
import { usualMass } from '../measurement/estimates.ts'
import { isRefusal } from '../outcome.ts'
import type { ChannelPlan } from './channel-plan.ts'

const around = (value: number, factor: number): Span => ({ from: value / factor, to: value * factor })

/**
 * Resonance in the air of the box, its opening shut, over what a guess leaves open: fc² = fs² + fs² α, where the second
 * part is the stiffness of the air over the moving mass. Source: R. H. Small 1972, from memory; the factors are common
 * practice, no source.
 */
function inBox({ driver, alpha }: Loudspeaker): Span {
  const free = around(driver.fsHz, GUESS_FACTOR.fsHz)
  const air = around(driver.fsHz ** 2 * alpha, usualMass(driver.sdCm2).factor)
  return { from: Math.sqrt(free.from ** 2 + air.from), to: Math.sqrt(free.to ** 2 + air.to) }
}

/** A warning for each kind of driver whose parameters are guessed. */
export function guessedFindings(
  { drivers }: Design,
  { mainIndex }: ChannelPlan,
  speaker: Loudspeaker,
): Finding[] {
  return drivers.flatMap(({ id, guessed, parameters }, index) => {
    if (guessed !== true) return []
    const at = `/drivers/${index}/parameters`
    const completed = completeDriver(parameters, at)
    const fsHz = isRefusal(completed) ? (parameters.fsHz ?? null) : completed.driver.fsHz
    return apply(guessedDriverRules, {
      at,
      id,
      freeHz: fsHz === null ? null : around(fsHz, GUESS_FACTOR.fsHz),
      inBoxHz: index === mainIndex ? inBox(speaker) : null,
    })
  })
}
