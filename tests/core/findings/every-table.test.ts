import { readdirSync } from 'node:fs'
import { expect, it } from 'vitest'
import type { Rule } from '../../../src/core/findings/rule.ts'

const FOLDER = new URL('../../../src/core/findings/', import.meta.url)
const tables = await Promise.all(
  readdirSync(FOLDER)
    .filter((name) => name.endsWith('.ts'))
    .map(async (name) => ({ name, exports: Object.entries(await import(new URL(name, FOLDER).href)) })),
)
const isTable = (value: unknown): value is readonly Rule<never>[] =>
  Array.isArray(value) && value.every((row) => typeof row === 'object' && 'code' in row && 'when' in row)
const rules = tables.flatMap(({ exports }) => exports.flatMap(([, value]) => (isTable(value) ? value : [])))
const unique = [...new Set(rules)]

it('finds the tables of every subject', () => {
  expect(unique.length).toBeGreaterThan(50)
})

it('gives every finding a code of its own across the subjects', () => {
  const codes = unique.map((rule) => rule.code)
  expect(codes.filter((code, i) => codes.indexOf(code) !== i)).toEqual([])
})

it.each(unique.map((rule) => [rule.code, rule] as const))(
  '%s is named in plain words and has a severity',
  (code, rule) => {
    expect(code).toMatch(/^[a-z0-9]+(-[a-z0-9]+)+$/)
    expect(['blocker', 'warning', 'note']).toContain(rule.severity)
  },
)
