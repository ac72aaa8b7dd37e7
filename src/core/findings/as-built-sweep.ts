import type { AsBuiltFacts } from '../as-built/facts.ts'
import type { Slip } from '../as-built/slips.ts'
import type { Story } from '../as-built/stories.ts'
import { hertz, ohm, significant } from '../say.ts'
import type { Rule } from './rule.ts'

/** Measured over planned beyond these is no box that is merely off, but an open or shorted lead. Common practice, no source. */
const OPEN_RATIO = 8
const SHORT_RATIO = 1 / 8
/** The published formulas stay this near to the fit at usual leakage. Acoustic reference: dip up to 2.5 % off fb. */
const OPINIONS_APART = 0.06

const isOpen = ({ coverage }: AsBuiltFacts) => coverage.levelRatio > OPEN_RATIO
const isShort = ({ coverage }: AsBuiltFacts) => coverage.levelRatio < SHORT_RATIO
const hasLevel = (facts: AsBuiltFacts) => !isOpen(facts) && !isShort(facts)

/** Whether a sweep is worth a fit at all. */
export const canBeExplained = (facts: AsBuiltFacts): boolean => hasLevel(facts) && facts.coverage.showsPeaks

const repeat = ({ coverage }: AsBuiltFacts): string =>
  `Measure again from ${hertz(coverage.wantedFromHz)} to ${hertz(coverage.wantedToHz)}, at least 12 points about each peak.`

const STORY_TEXT = {
  none: 'the planned box with other figures',
  'port-blocked': 'an opening that is blocked',
  'driver-reversed': 'a driver connected backwards',
  'driver-open': 'a driver that is open',
  'driver-shorted': 'a driver that is shorted',
  'other-joint': 'drivers joined the other way',
} satisfies Record<Story['fault'], string>

const resonanceOf = ({ judged }: AsBuiltFacts): number | null =>
  (judged.get('tuningHz') ?? judged.get('resonanceHz'))?.row.measured ?? null

function opinionsApart(facts: AsBuiltFacts): number {
  const fit = resonanceOf(facts)
  const classic = facts.secondOpinion?.resonanceHz ?? null
  return fit === null || classic === null ? 0 : Math.abs(classic / fit - 1)
}

const MOST_NAMED = 5
const slipText = (slip: Slip): string => `${ohm(slip.ohm)} at ${hertz(slip.hz)}`

function outliersText(hz: readonly number[], readings: number): string {
  const more = hz.length > MOST_NAMED ? ` and ${hz.length - MOST_NAMED} more` : ''
  const which = `${hz.slice(0, MOST_NAMED).map(hertz).join(', ')}${more}`
  const [lie, were] = hz.length === 1 ? ['lies', 'was'] : ['lie', 'were']
  return `${hz.length} of the ${readings} readings about the resonances ${lie} far off the curve of all others and ${were} left out: ${which}.`
}

/** Whether the sweep is good for anything, and how far its answer goes. */
export const asBuiltSweepRules: readonly Rule<AsBuiltFacts>[] = [
  {
    code: 'as-built-terminals-open',
    severity: 'blocker',
    at: '/measured/sweep',
    when: isOpen,
    value: ({ coverage }) => coverage.levelRatio,
    limit: () => OPEN_RATIO,
    message: ({ coverage }) =>
      `The impedance is ${significant(coverage.levelRatio, 2)} times the planned one: a lead, a joint or a coil is open, or the readings are not in ohm.`,
    remedies: () => [
      'Measure with a meter at the terminals, then at each driver, and look for the open joint.',
      'Check the columns and the unit of the sweep: frequency in Hz, impedance in ohm.',
    ],
  },
  {
    code: 'as-built-terminals-shorted',
    severity: 'blocker',
    at: '/measured/sweep',
    when: isShort,
    value: ({ coverage }) => coverage.levelRatio,
    limit: () => SHORT_RATIO,
    message: ({ coverage }) =>
      `The impedance is ${significant(coverage.levelRatio, 2)} of the planned one: the terminals are as good as shorted, or the readings are not in ohm.`,
    remedies: () => [
      'Do not connect an amplifier. Look for a strand of wire across two terminals, and measure each driver alone.',
      'Check the columns and the unit of the sweep: frequency in Hz, impedance in ohm.',
    ],
  },
  {
    code: 'as-built-sweep-misses-peaks',
    severity: 'warning',
    at: '/measured/sweep',
    when: (facts) => hasLevel(facts) && !facts.coverage.showsPeaks,
    message: ({ planned, coverage }) =>
      planned.speaker.opening === null
        ? `The sweep does not show the resonance: the curve must rise to its peak and fall again, somewhere about ${hertz(planned.speaker.boxHz)}. Nothing is told from this.`
        : `The sweep does not show both flanks of the peaks: the plan has them between ${hertz(3 * coverage.wantedFromHz)} and ${hertz(coverage.wantedToHz / 4)}. Nothing is told from this.`,
    remedies: (facts) => [
      repeat(facts),
      'Check the unit of the frequencies: they are in Hz, 0.1 kHz is 100.',
      'If the curve is flat over this whole range, the driver does not move: look whether its cone is stuck.',
    ],
  },
  {
    code: 'as-built-not-explained',
    severity: 'warning',
    at: '/measured/sweep',
    unit: 'percent',
    when: (facts) => canBeExplained(facts) && facts.best === null,
    value: ({ misfit }) => 100 * (misfit ?? 0),
    message: ({ misfit }) =>
      `No box that was tried has this curve: the nearest is still ${significant(100 * (misfit ?? 0), 2)} % off on average. Figures from it would be guesses, so none are given.`,
    remedies: () => [
      'See whether the design is that of the measured box: drivers, their count, wiring, kind of box.',
      'Look for two faults at once: repair what can be seen, and measure again.',
      'Measure again at another level: a curve that changes with it is rub, rattle or a leak that whistles.',
    ],
  },
  {
    code: 'as-built-two-explanations',
    severity: 'warning',
    at: '/measured/sweep',
    when: ({ rival }) => rival !== null,
    message: ({ best, rival }) =>
      `Two causes explain the curve about equally well: ${STORY_TEXT[best?.story.fault ?? 'none']}, or ${STORY_TEXT[rival?.story.fault ?? 'none']}. The figures are those of the first.`,
    remedies: (facts) => [
      'Check both by hand: look, and measure each driver alone with a meter.',
      `${repeat(facts)} With phase, if the instrument has it.`,
    ],
  },
  {
    code: 'as-built-readings-impossible',
    severity: 'note',
    at: '/measured/sweep',
    when: ({ coverage }) => coverage.slips.length > 0,
    value: ({ coverage }) => coverage.slips.length,
    message: ({ coverage }) =>
      `Left out, as no box of this plan can read so: ${coverage.slips.slice(0, MOST_NAMED).map(slipText).join(', ')}${
        coverage.slips.length > MOST_NAMED ? ` and ${coverage.slips.length - MOST_NAMED} more` : ''
      }.`,
    remedies: () => [
      'Press the clips on and measure these frequencies again; a clip that lets go gives such readings.',
    ],
  },
  {
    code: 'as-built-readings-left-out',
    severity: 'note',
    at: '/measured/sweep',
    when: ({ best }) => best !== null && best.leftOut > 0,
    value: ({ best }) => best?.outliersHz.length ?? 0,
    message: ({ best }) => outliersText(best?.outliersHz ?? [], best?.readings ?? 0),
    remedies: () => [
      'Look at them in the plot, and measure those frequencies again: a slip of the pen, a buzz of the mains or a rattle.',
    ],
  },
  {
    code: 'as-built-losses-not-told-apart',
    severity: 'note',
    at: '/measured/sweep',
    when: ({ best, lossesToldApart }) => !lossesToldApart && best?.story.free.includes('leak') === true,
    message: () =>
      'The curve does not say how much of the loss is leak and how much is absorption: the Q of one (QL) and of the other (QA) trade against each other, and only their sum is sure.',
    remedies: (facts) => [`${repeat(facts)} With phase, if the instrument has it.`],
  },
  {
    code: 'as-built-opinions-differ',
    severity: 'note',
    at: '/measured/sweep',
    unit: 'Hz',
    when: (facts) => opinionsApart(facts) > OPINIONS_APART,
    value: (facts) => facts.secondOpinion?.resonanceHz ?? 0,
    limit: (facts) => resonanceOf(facts) ?? 0,
    message: (facts) =>
      `The published formulas put the resonance at ${hertz(facts.secondOpinion?.resonanceHz ?? 0)}, the fit at ${hertz(resonanceOf(facts) ?? 0)}. High losses, a large coil or few points about the dip do that; the fit is the answer.`,
    remedies: () => ['Measure more points about peaks and dip; the two should come nearer.'],
  },
]

/** What is left to say when no cause was found. */
export const asBuiltRestRules: readonly Rule<AsBuiltFacts & { causes: number }>[] = [
  {
    code: 'as-built-off-plan',
    severity: 'warning',
    at: '/design',
    when: ({ best, causes, judged }) =>
      best !== null && causes === 0 && [...judged.values()].some(({ row }) => !row.within),
    message: ({ judged }) =>
      `Off the plan without one cause that stands out: ${[...judged.values()]
        .filter(({ row }) => !row.within)
        .map(({ name }) => name)
        .join(', ')}. Several small differences add up.`,
    remedies: () => ['Compare the figures one by one with the plan; the largest in the table comes first.'],
  },
  {
    code: 'as-built-as-planned',
    severity: 'note',
    at: '/design',
    when: ({ best, rival, judged }) =>
      best?.story.fault === 'none' && rival === null && [...judged.values()].every(({ row }) => row.within),
    message: () => 'The box is as planned: every figure that the curve tells is within its tolerance.',
    remedies: () => ['Nothing to do. Keep the sweep: measured again in a year, it shows what has aged.'],
  },
]
