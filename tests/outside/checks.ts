import { readFileSync } from 'node:fs'
import { expect } from 'vitest'

interface Bounds {
  rel?: number
  abs?: number
}

// biome-ignore lint/suspicious/noExplicitAny: rows of many shapes, read by the test that knows each
type Loose = Record<string, any>

/** One row of a check file: what goes in, what must come out, how near, and who published it. */
export interface Check {
  id: string
  topic: string
  inputs: Loose
  expected: Loose
  tolerance: Bounds & { perKey?: Record<string, Bounds> }
  source: string
  fromMemory: boolean
  note: string
}

/** The rows of one or more topics; fails when a topic has gone, so that no comparison is lost in silence. */
export function checks(file: string, ...topics: string[]): Check[] {
  const rows: Check[] = JSON.parse(readFileSync(new URL(file, import.meta.url), 'utf8'))
  for (const topic of topics)
    if (!rows.some((row) => row.topic === topic)) throw new Error(`${file} has no topic ${topic}`)
  return rows.filter((row) => topics.includes(row.topic))
}

/** Holds one figure against a row: |Δ| ≤ max(abs, rel·|expected|), element by element. */
export function expectWithin(check: Check, key: string, actual: unknown): void {
  const bounds = check.tolerance.perKey?.[key] ?? check.tolerance
  const compare = (expected: unknown, value: unknown, where: string): void => {
    if (Array.isArray(expected)) {
      expect(value, where).toHaveLength(expected.length)
      expected.forEach((item, i) => {
        compare(item, (value as unknown[])[i], `${where}[${i}]`)
      })
    } else if (typeof expected === 'number') {
      const slack = Math.max(bounds.abs ?? 0, (bounds.rel ?? 0) * Math.abs(expected))
      expect(
        Math.abs((value as number) - expected),
        `${where}: ${value} against ${expected}`,
      ).toBeLessThanOrEqual(slack)
    } else expect(value, where).toEqual(expected)
  }
  compare(check.expected[key], actual, `${check.id} ${key}`)
}
