import { decibel, hertz, volt } from '../say.ts'
import type { BoxFacts } from './box-facts.ts'
import { put, putWithin, type Remedy, remedy } from './remedy.ts'
import { downToThree, upToThree } from './rounded.ts'

/** Steps that give the channel a voltage, V; null where the amplifier sets it. */
const driven = ({ drive }: BoxFacts, voltageV: number) => {
  if (drive === null) return null
  const steps = putWithin(drive.at, voltageV, [0.001, 200])
  return steps === null || drive.given ? steps : [put('/drive', { voltageV })]
}

export function quieter(facts: BoxFacts): Remedy[] {
  if (facts.safeVoltageV === null) return []
  const voltageV = downToThree(facts.safeVoltageV)
  const down = decibel(20 * Math.log10(facts.driveVoltageV / facts.safeVoltageV))
  return [
    remedy(
      `Keep the level down: with notes below ${hertz(facts.bandFromHz)} in the music, ${volt(voltageV)} on the channel is the most, ${down} below full.`,
      driven(facts, voltageV),
    ),
  ]
}

/** The drive at a share of the voltage. */
export function turnedDown(facts: BoxFacts, share: number): Remedy {
  const voltageV = downToThree(facts.driveVoltageV * share)
  return remedy(`Turn the level down: ${volt(voltageV)} on the channel is the most.`, driven(facts, voltageV))
}

export const highPass = (facts: BoxFacts): string[] =>
  // A corner inside the band takes the music away with the danger.
  facts.protectiveHighPassHz === null || facts.protectiveHighPassHz > facts.bandFromHz
    ? []
    : [`Put a second-order high-pass at ${hertz(facts.protectiveHighPassHz)} before the amplifier.`]

/** Against air that is too fast for a limit, m/s. */
export const widerPort = (facts: BoxFacts, limitMPerS: number): Remedy[] => [
  'Use a wider port; it gets longer with its area.',
  'Round both ends of the port.',
  turnedDown(facts, limitMPerS / facts.airSpeedMPerS),
]

export const smallerBox = (facts: BoxFacts): string =>
  facts.kind === 'closed'
    ? 'Use a smaller box: it holds the cone better, at the cost of the deepest notes.'
    : 'Use a smaller box, or tune it nearer to the note where the cone moves most.'

/** What brings a missing lowest note back: an open box plays best just above its tuning. */
export function deeper(facts: BoxFacts): Remedy {
  if (facts.kind === 'closed') return 'Use a larger box.'
  const lowestHz = facts.lowest?.hz ?? 0
  if ((facts.tuningHz ?? 0) >= 0.85 * lowestHz) return 'Use a larger box, or a lower tuning.'
  return remedy(
    'Tune the box higher: it plays loudest just above its tuning, and this tuning lies far below the note.',
    facts.tuning(lowestHz),
  )
}

/** A lowest note that the box still plays: where its level has fallen by 6 dB. */
export function higherLowestNote({ f6Hz, lowest }: BoxFacts): Remedy {
  if (f6Hz === null || f6Hz <= (lowest?.hz ?? 0)) return 'Ask for a higher lowest note.'
  const hz = upToThree(f6Hz)
  return remedy(
    `Ask for a higher lowest note: ${hertz(hz)} or above.`,
    putWithin('/wants/lowestHz', hz, [5, 2000]),
  )
}

/** Closing an open box helps a lightly damped driver, unless the box is so small that it booms closed as well. */
export const lessBoom = ({ closing, closedPeakDb, peakDb }: BoxFacts): Remedy =>
  closing !== null && (closedPeakDb() ?? peakDb) < peakDb
    ? remedy('Close the box: this driver is too lightly damped for a port.', closing)
    : 'Use a larger box; for a driver of high Q even that helps only so far.'

/** Fibre brings a boom down, unless the box is full of it; a given absorption goes before the lining. */
export const filled = ({ lining, absorptionGiven, fitsFilled }: BoxFacts): Remedy[] =>
  lining === 'filled'
    ? []
    : [
        remedy(
          'Fill the box loosely with fibre.',
          absorptionGiven || !fitsFilled ? null : [put('/box/lining', 'filled')],
        ),
      ]

/** Tunings that are none too far from the resonance of the driver, in multiples of it, the nearest first. */
const NEAR = [1, 0.8, 1.25, 0.6, 1.6]

/** The nearest tuning to the resonance of the driver that the port reaches within the box. */
export function tunedNearDriver(facts: BoxFacts): Remedy {
  for (const share of NEAR) {
    const hz = downToThree(share * facts.fsHz)
    const steps = facts.tuning(hz)
    if (steps !== null)
      return remedy(
        `Tune nearer to the resonance of the driver, ${hertz(facts.fsHz)}: to ${hertz(hz)}.`,
        steps,
      )
  }
  return 'Tune nearer to the resonance of the driver.'
}
