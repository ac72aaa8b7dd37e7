import type { Static, TSchema } from 'typebox'
import type { Refusal } from '../core/outcome.ts'
import type { DecimalMark } from '../core/quantity.ts'
import { faultList } from './fault-list.ts'
import { hasLongList, longListFaults } from './long-lists.ts'
import { readTexts } from './read-text.ts'
import { sizeFault } from './size-limits.ts'
import { validatorOf } from './validator.ts'

/** Reads what a client sent: text to numbers, then the schema; every fault at once. The body may be changed in place. */
export type ReadBody<Body> = (sent: unknown, decimal?: DecimalMark) => Promise<{ body: Body } | Refusal>

/** The check is compiled at the first body: all of them together take a quarter of a second of a start. */
export function bodyReader<S extends TSchema>(schema: S): ReadBody<Static<S>> {
  let compiled: ReturnType<typeof validatorOf<S>> | undefined
  return async (sent, decimal = 'point') => {
    const tooMuch = sizeFault(sent)
    if (tooMuch !== undefined) return { faults: [tooMuch] }
    const tooLong = hasLongList(sent) ? [...longListFaults(schema, sent, '')] : []
    if (tooLong.length > 0) return { faults: tooLong }
    compiled ??= validatorOf(schema)
    const fits = compiled
    // Most bodies hold numbers and fit as they are; text never does where a number with a unit belongs.
    if (fits(sent)) return { body: sent }
    const textFaults = await readTexts(schema, sent, decimal)
    if (fits(sent) && textFaults.length === 0) return { body: sent }
    return { faults: faultList(textFaults, fits.errors ?? []) }
  }
}
