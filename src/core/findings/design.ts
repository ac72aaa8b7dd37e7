import type { Rule } from './rule.ts'

export interface WholeDesignFacts {
  hasSides: boolean
  /** Kinds of driver with a closed back of their own, which the curves leave out. */
  ownBacks: readonly string[]
}

/** Rules about what a design leaves open between its parts. */
export const designRules: readonly Rule<WholeDesignFacts>[] = [
  {
    code: 'sides-unknown',
    severity: 'warning',
    at: '/box',
    when: ({ hasSides }) => !hasSides,
    message: () =>
      'Only the volume of the box is known, so there are no panels, no holes and no fit to check yet.',
    remedies: () => ['Give the outer sides, or proportions beside the volume, and the board on hand.'],
  },
  {
    code: 'own-back-not-in-curves',
    severity: 'note',
    at: '/drivers',
    when: ({ ownBacks }) => ownBacks.length > 0,
    message: ({ ownBacks }) =>
      `The load counts ${ownBacks.join(', ')}, but response and limits are those of the driver in the box alone.`,
    remedies: () => ['Judge where the two meet by ear, or measure.'],
  },
]
