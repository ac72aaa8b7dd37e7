import type { PowerFacts } from '../findings/power-facts.ts'
import { SAFE_LEVEL_DB } from './loudness.ts'

/** Stored energy that a reservoir discharges with a spark from, J. Common practice, no source. */
const SPARK_J = 0.5

/** Where the electrical work can hurt someone, each at its step; common rules that local codes and manuals overrule. */
const CAUTIONS: readonly { when: (facts: PowerFacts) => boolean; text: string }[] = [
  {
    when: () => true,
    text: 'Soldering: the iron is at 300 to 400 °C and rosin flux fume causes asthma. Draw the fume off, do not lean over it, wash hands after lead solder; follow the manual of the iron.',
  },
  {
    when: () => true,
    text: 'First power: check the polarity, then go through a current limit, a bench supply at 100 mA or 47 ohm in series.',
  },
  {
    when: ({ amplifier }) => amplifier.output === 'bridge',
    text: 'Bridge output: neither loudspeaker wire is ground. Never join the two channels, never let a wire touch ground, a metal box or the clip of a grounded instrument.',
  },
  {
    when: ({ source }) => source.kind === 'adapter' || source.kind === 'charger',
    text: 'Mains: use a closed, approved, isolated adapter and never open it. Work on mains is for licensed persons under local codes.',
  },
  {
    when: ({ source }) => source.kind === 'cells',
    text: 'Lithium cells: only with a protection board and a fuse at the cell, none salvaged or dented, never soldered to; charge with the right charger, watched, on something that does not burn. Follow local rules and the maker of the cell.',
  },
  {
    when: ({ source }) => source.kind === 'power-bank',
    text: 'Power bank: do not open it, do not use a swollen or dented one, keep it out of the heat of a closed box. Follow its manual.',
  },
  {
    when: ({ reservoirUf, source }) => 0.5 * reservoirUf * 1e-6 * source.voltageV ** 2 > SPARK_J,
    text: 'The reservoir stays charged after switching off: discharge it through a resistor, not with a screwdriver.',
  },
  {
    when: ({ sections }) => (sections.loudness?.programmeDb ?? 0) > SAFE_LEVEL_DB,
    text: `Hearing: above ${SAFE_LEVEL_DB} dB(A) the safe time is 8 hours a day and halves every 3 dB; test tones at full volume are louder than music.`,
  },
]

export const powerCautions = (facts: PowerFacts): string[] =>
  CAUTIONS.filter(({ when }) => when(facts)).map(({ text }) => text)
