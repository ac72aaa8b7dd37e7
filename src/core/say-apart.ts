import { say } from './say.ts'

/** Digits that are added at most: what differs by less is one and the same on any bench. */
const MOST_MORE = 3

/** Text of a quantity with so many digits more than usual. */
type Said = (value: number, more: number) => string

const millimetres: Said = (value, more) => `${Number(value.toFixed(1 + more))} mm`
const inUnit =
  (unit: string): Said =>
  (value, more) =>
    say(value, unit, 3 + more)

/**
 * Texts of a value and of the limit it is held against, as `say.ts` has them; with a digit more, up to three, while
 * both read the same though they differ: "2.53 mm" beside "2.5 mm", not "2.5 mm" beside "2.5 mm".
 */
function apart(said: Said, value: number, limit: number): [value: string, limit: string] {
  for (let more = 0; more <= MOST_MORE; more++) {
    const texts: [string, string] = [said(value, more), said(limit, more)]
    if (texts[0] !== texts[1]) return texts
  }
  return [said(value, 0), said(limit, 0)]
}

/** A length and its limit, mm, to a tenth or as much finer as tells them apart. */
export const mmApart = (valueMm: number, limitMm: number): [value: string, limit: string] =>
  apart(millimetres, valueMm, limitMm)

/** A quantity and its limit in a unit, three digits or as many more as tell them apart; '' for a plain number. */
export const saidApart = (value: number, limit: number, unit: string): [value: string, limit: string] =>
  apart(inUnit(unit), value, limit)
