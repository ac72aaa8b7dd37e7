import { type Draft, type Json, valueAt, withValue } from './draft.ts'
import { driversOf, fits, kindsOf, nameOf } from './kinds.ts'
import { branchesOf, namesIn, partsIn, without, wordsOf } from './wiring-tree.ts'

/** A design after a driver was taken out, and what of its wiring went with it. */
export interface Removal {
  draft: Draft
  /** Empty when nothing but the driver went. */
  said: string
  /** Puts driver and wiring back into the design as it has become. */
  back: (draft: Draft) => Draft
}

/**
 * The design without one kind of driver. Its wiring stays where it does not name the driver; else the last wiring that
 * fits those that are left comes back, else the driver's branch goes, and for one kind left its crossover.
 */
export function withoutDriver(draft: Draft, index: number, past: readonly Draft[]): Removal {
  const id = nameOf(draft, index)
  const wiring = valueAt(draft, '/wiring')
  const left = withValue(draft, `/drivers/${index}`, undefined)
  const back = (now: Draft): Draft => {
    const drivers = [...driversOf(now)]
    drivers.splice(index, 0, valueAt(draft, `/drivers/${index}`) ?? { id })
    return withValue(withValue(now, '/drivers', drivers), '/wiring', wiring)
  }
  if (wiring === undefined || !namesIn(wiring).includes(id)) return { draft: left, said: '', back }
  const next = wiringFor(left, without(wiring, id), past)
  const stays = next === undefined ? [] : branchesOf(next, 'parallel').map(wordsOf)
  const went = branchesOf(wiring, 'parallel')
    .map(wordsOf)
    .filter((words) => !stays.includes(words))
  return {
    draft: withValue(left, '/wiring', next),
    said: `With ${id} its wiring was taken out: ${went.join('; ')}.${next === undefined ? ' What is left hangs straight on the amplifier.' : ''}`,
    back,
  }
}

function wiringFor(draft: Draft, rest: Json | undefined, past: readonly Draft[]): Json | undefined {
  const kinds = kindsOf(draft)
  const earlier = past
    .map((one) => valueAt(one, '/wiring'))
    .findLast((one) => one !== undefined && fits(one, kinds))
  if (earlier !== undefined || rest === undefined) return earlier
  return kinds.length === 1 && partsIn(rest).length > 0 ? undefined : rest
}
