import { readFileSync } from 'node:fs'
import type { Part, Stock } from '../../../src/schema/shop.ts'

/** A published instance: equal sheets, turning allowed, cuts from edge to edge. */
export interface PublishedInstance {
  id: string
  sheet: [number, number]
  lowerBound: number
  bestGuillotine: number
  parts: [number, number][]
}

/** A case small enough for paper and pencil; `sheets` is the least number of boards, null when it cannot be done. */
export interface TinyCase {
  id: string
  stock: Stock[]
  kerfMm: number
  parts: Part[]
  sheets: number | null
  use?: Record<string, number>
  why: string
}

const read = (name: string) => JSON.parse(readFileSync(new URL(name, import.meta.url), 'utf8'))

/** Berkey & Wang 1987 and Martello & Vigo 1998, one instance of each class; the file says where the values are from. */
export const publishedSample = (): PublishedInstance[] => read('published-sample.json').instances
/** Own cases, every one decided by exhaustive search over edge-to-edge cuts outside this project. */
export const tinyCases = (): TinyCase[] => read('tiny.json')
