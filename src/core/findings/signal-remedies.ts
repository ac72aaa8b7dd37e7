import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import { USUAL_GAIN_DB } from '../power/gain-section.ts'
import { FORWARD_V } from '../power/indicator.ts'
import { ampere, decibel, say, volt } from '../say.ts'
import type { PowerFacts } from './power-facts.ts'
import { put, putWithin, type Remedy, remedy, takeOut } from './remedy.ts'
import { downToThree, upToThree } from './rounded.ts'
import { stronger } from './supply-remedies.ts'

type LimitedBy = PowerBudgetSections['power']['limitedBy']

/** Gains that boards may be set to at all, dB: the ends of the contract. */
const GAINS_DB = [-20, 80] as const
/** Nearer than the first nobody sits before a box, m, common practice, no source; farther the contract ends. */
const DISTANCES_M = [0.3, 100] as const
/** Resistances that controls are sold with, kohm. Common practice, no source. */
const CONTROLS_KOHM = [5, 10, 20, 25, 50, 100, 250, 500]
/** Current at which an indicator is still clear indoors, mA. Common practice, no source. */
const CLEAR_MA = 1

/** The gain at which the source just clips the amplifier. */
export function otherGain({ amplifier, sections }: PowerFacts, which: 'higher' | 'lower'): Remedy {
  const exactDb = (amplifier.gainDb ?? USUAL_GAIN_DB) - (sections.gain?.overdriveDb ?? 0)
  const gainDb = Number(exactDb.toFixed(1))
  return remedy(
    `Set a ${which} gain on the board, if it can: ${decibel(gainDb)}.`,
    putWithin('/amplifier/gainDb', gainDb, GAINS_DB),
  )
}

/** A place from which a level that is missing some decibels is reached. */
export function closer({ sections }: PowerFacts, gains: 'peaks' | 'programme'): Remedy {
  const text = 'Sit closer, or put the boxes near a wall'
  const { distanceM = 0, wantedDb = null, peakDb = null, programmeDb = null } = sections.loudness ?? {}
  const reachedDb = gains === 'peaks' ? peakDb : programmeDb
  if (wantedDb === null || reachedDb === null || reachedDb > wantedDb) return `${text}.`
  const nearM = downToThree(distanceM * 10 ** ((reachedDb - wantedDb) / 20))
  const steps = putWithin('/wants/listeningDistanceM', nearM, DISTANCES_M)
  return steps === null ? `${text}.` : remedy(`${text}: at ${say(nearM, 'm')} the level is reached.`, steps)
}

/** What there is to gain where the loudness ends: more voltage does nothing for a weak source. */
export const LOUDER = {
  clipping: () => [
    'Wire the drivers so that the amplifier gives more power.',
    'Use a higher supply voltage if board and drivers stand it.',
  ],
  'source-level': () => ['Set a higher gain on the board, or use a source of a higher level.'],
  // Peaks come out of the capacitors: only the programme gains by more current.
  'supply-current': (facts, gains) => {
    const { sineA } = facts.sections.supply
    const text = `Use a supply of the same voltage that gives more current, ${ampere(sineA)} say.`
    return [gains === 'programme' ? stronger(facts, text, sineA) : text]
  },
} satisfies Record<LimitedBy, (facts: PowerFacts, gains: 'peaks' | 'programme') => Remedy[]>

/** A coupling capacitor that falls off below a frequency, Hz. */
export function largerCapacitor({ signal, sections }: PowerFacts, cornerHz: number): Remedy {
  const exactUf = ((signal?.inputCapacitorUf ?? 0) * (sections.gain?.couplingCornerHz ?? 0)) / cornerHz
  const leastUf = upToThree(exactUf)
  return remedy(
    `Use ${say(leastUf, 'uF')} or more.`,
    putWithin('/signal/inputCapacitorUf', leastUf, [0.0001, 10_000]),
  )
}

/** A usual control up to a resistance, ohm, where one is not below what a source bears, ohm. */
export function smallerControl(mostOhm: number, leastOhm: number): Remedy[] {
  const control = CONTROLS_KOHM.findLast((kohm) => 1000 * kohm <= mostOhm && 1000 * kohm >= leastOhm)
  if (control === undefined) return []
  return [
    remedy(
      `Use a control of ${say(mostOhm / 1000, 'kohm')} or less, but not below ${say(leastOhm / 1000, 'kohm')}: ${control} kohm.`,
      [put('/signal/volumeControl/resistanceKohm', control)],
    ),
  ]
}

/** An indicator at a current at which its resistor stays cool, unless that is what is asked already. */
export const dimmerIndicator = ({ indicatorMa }: PowerFacts): Remedy =>
  remedy(
    `Take ${CLEAR_MA} mA for the indicator: it is still clear indoors.`,
    indicatorMa > CLEAR_MA ? [put('/supply/indicator/currentMa', CLEAR_MA)] : null,
  )

/** An indicator that lights at a low voltage; it helps only above what a red one needs. */
export const redIndicator = ({ source, supply }: PowerFacts): Remedy =>
  remedy(
    `Use a red one; it needs about ${volt(FORWARD_V.red)}.`,
    source.voltageV <= FORWARD_V.red
      ? null
      : [
          put('/supply/indicator/colour', 'red'),
          ...(supply.indicator?.forwardV === undefined ? [] : [takeOut('/supply/indicator/forwardV')]),
        ],
  )
