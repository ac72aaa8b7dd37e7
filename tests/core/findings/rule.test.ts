import { expect, it } from 'vitest'
import { apply, bySeverity, cautionsOf, type Rule, verdictOf } from '../../../src/core/findings/rule.ts'

const rule = (code: string, severity: Rule<number>['severity'], limit: number): Rule<number> => ({
  code,
  severity,
  at: '/x',
  when: (x) => x > limit,
  value: (x) => x,
  message: () => code,
  remedies: () => ['less'],
  caution: `mind ${code}`,
})
const RULES = [rule('a note', 'note', 0), rule('a blocker', 'blocker', 2), rule('a warning', 'warning', 1)]

it('keeps the rules that apply, most severe first', () => {
  expect(bySeverity(apply(RULES, 3)).map((finding) => finding.code)).toEqual([
    'a blocker',
    'a warning',
    'a note',
  ])
  expect(apply(RULES, 1).map((finding) => finding.code)).toEqual(['a note'])
})

it.each([
  [0, 'ready'],
  [1, 'ready'],
  [2, 'review'],
  [3, 'blocked'],
] as const)('facts of %d are %s', (facts, verdict) => {
  expect(verdictOf(apply(RULES, facts))).toBe(verdict)
})

it('says the caution of what applies', () => {
  expect(cautionsOf(RULES, 1)).toEqual(['mind a note'])
})
