import type { PairRow } from '../../schema/driver-measurement-sections.ts'
import { decibel, significant } from '../say.ts'
import type { Rule } from './rule.ts'

/** Two drivers that go together, and where they stand in the request. */
export interface MatchFacts {
  pair: PairRow
  at: string
  /** Whether there are others to choose from. */
  others: boolean
}

const apart = ({ pair }: MatchFacts): string =>
  `resonance ${significant(pair.fsPercent, 2)} %, total Q ${significant(pair.qtsPercent, 2)} %, resistance ${significant(pair.rePercent, 2)} %, compliance ${significant(pair.vasPercent, 2)} %, level ${decibel(pair.levelDb)}`

/** Beyond this two drivers are hardly of one kind. Common practice, no source. */
const OTHER_KIND = 3

/** How well drivers that go together match. */
export const measurementMatchRules: readonly Rule<MatchFacts>[] = [
  {
    code: 'measurement-drivers-differ',
    severity: 'warning',
    at: ({ at }) => at,
    when: ({ pair }) => pair.chosen && pair.score > 1 && pair.score <= OTHER_KIND,
    value: ({ pair }) => pair.score,
    limit: () => 1,
    message: (facts) =>
      `${facts.pair.first} and ${facts.pair.second} differ by more than a pair should: ${apart(facts)}.`,
    remedies: ({ others }) => [
      'Measure both again on the same day, equally warm and after some minutes of music.',
      'Use each in a box of its own data, or the two together in one box, where they share the work.',
      ...(others ? [] : ['Measure a third one of the kind: the best pair of three is often a good one.']),
    ],
  },
  {
    code: 'measurement-drivers-of-two-kinds',
    severity: 'blocker',
    at: ({ at }) => at,
    when: ({ pair }) => pair.chosen && pair.score > OTHER_KIND,
    value: ({ pair }) => pair.score,
    limit: () => OTHER_KIND,
    message: (facts) =>
      `${facts.pair.first} and ${facts.pair.second} are no pair: ${apart(facts)}. One is of another kind, or damaged.`,
    remedies: () => [
      'Move both cones by hand: a scraping coil or a torn surround is soon felt.',
      'Do not wire these two to one amplifier channel, and do not use them left and right.',
    ],
  },
  {
    code: 'measurement-drivers-match',
    severity: 'note',
    at: ({ at }) => at,
    when: ({ pair }) => pair.chosen && pair.score <= 1,
    value: ({ pair }) => pair.score,
    limit: () => 1,
    message: (facts) => `${facts.pair.first} and ${facts.pair.second} are a pair: ${apart(facts)}.`,
    remedies: () => ['Nothing to do; mark them, so that they stay together.'],
  },
]
