import type { Box } from '../../schema/box.ts'
import { put, type Remedy, remedy } from './remedy.ts'
import type { Rule } from './rule.ts'

export interface WholeDesignFacts {
  hasSides: boolean
  /** Where there are no sides: proportions at which everything fits; null when no usual ones do. */
  proportions: Box['proportions'] | null
  /** Kinds of driver with a closed back of their own, which the curves leave out. */
  ownBacks: readonly string[]
}

function proportioned({ proportions }: WholeDesignFacts): Remedy[] {
  if (proportions === null || proportions === undefined) return []
  const { width, height, depth } = proportions
  return [
    remedy(
      `Take the outer sides as ${width} wide to ${height} high to ${depth} deep: everything planned then fits.`,
      [put('/box/proportions', proportions)],
    ),
  ]
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
    remedies: (facts) => [
      ...proportioned(facts),
      'Give the outer sides, or proportions beside the volume, and the board on hand.',
    ],
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
