import { digits } from './digits.ts'
import { type Draft, type Json, valueAt } from './draft.ts'
import { fits, type Kind } from './kinds.ts'
import { namesIn, wordsOf } from './wiring-tree.ts'

/** The notes that one kind of driver plays; without an end where none is set. */
export interface Band {
  id: string
  fromHz?: number
  toHz?: number
}

/** A way to wire them that can be taken by one touch; its parts are sized by the service. */
export interface Plan {
  text: string
  bands: readonly Band[]
  /** What stays as it is, beside the bands. */
  kept?: Json
}

/** Usual places to hand over, between two kinds and between three. Common practice, no source. */
const TWO_WAY_HZ = [2500, 3500, 5000]
const THREE_WAY_HZ = [
  [500, 3500],
  [800, 5000],
]
/** More kinds hand over at even steps between these. Common practice, no source. */
const MANY_WAY_HZ = { from: 300, to: 6000 }
/** Where a capacitor alone lets a tweeter join drivers that play everything. Common practice, no source. */
const JOINING_HZ = [3500, 8000]

/** Above this hardly anything is left to play. */
const LAST_HZ = 10_000

/** A tweeter takes over at twice its own resonance or above, where that is known. Common practice, no source. */
const standing = (cornerHz: number, fsHz: number): number =>
  cornerHz < 2 * fsHz && 2 * fsHz <= LAST_HZ ? Math.ceil((2 * fsHz) / 100) * 100 : cornerHz

/** Corners that these kinds stand, each once. */
const allStanding = (cornersHz: readonly number[], kinds: readonly Kind[]): number[] => [
  ...new Set(cornersHz.map((hz) => kinds.reduce((corner, { fsHz }) => standing(corner, fsHz), hz))),
]

/**
 * Ways to wire the drivers of a design: what is wired stays and the others join it, a crossover, all straight together;
 * and the last way that the design had before, when it fits.
 */
export function plansOf(kinds: readonly Kind[], draft: Draft, past: readonly Draft[]): Plan[] {
  const wiring = valueAt(draft, '/wiring')
  const before = past
    .map((one) => valueAt(one, '/wiring'))
    .findLast((one) => one !== undefined && fits(one, kinds) && wordsOf(one) !== wordsOf(wiring ?? null))
  return [
    ...(before === undefined ? [] : [{ text: `As before: ${wordsOf(before)}`, bands: [], kept: before }]),
    ...joined(kinds, wiring),
    ...handedOver(kinds),
    {
      text:
        kinds.length === 1
          ? 'Straight on the amplifier, as it allows'
          : 'All straight, without a crossover, only where all stand the bass; a tweeter does not',
      bands: kinds.map(({ id }) => ({ id })),
    },
  ]
}

/** Kinds that are not wired yet join those that are, behind a capacitor. */
function joined(kinds: readonly Kind[], wiring: Json | undefined): Plan[] {
  if (wiring === undefined) return []
  const missing = kinds.filter(({ id }) => !namesIn(wiring).includes(id))
  const wired = kinds.filter((kind) => !missing.includes(kind))
  if (missing.length === 0 || wired.length === 0 || !fits(wiring, wired)) return []
  return allStanding(JOINING_HZ, missing).map((fromHz) => {
    const bands = missing.map(({ id }) => ({ id, fromHz }))
    return { text: `The others as they are, ${textOf(bands)}`, bands, kept: wiring }
  })
}

function handedOver(kinds: readonly Kind[]): Plan[] {
  const [bass, ...others] = kinds
  if (bass === undefined || others.length === 0) return []
  const alike = (cornerHz: number, bassAlone: boolean) => [
    bassAlone ? { id: bass.id, toHz: cornerHz } : { id: bass.id },
    ...others.map(({ id }) => ({ id, fromHz: cornerHz })),
  ]
  const [middle, treble, ...more] = others
  const unsure = middle !== undefined && treble !== undefined && Number.isNaN(middle.fsHz + treble.fsHz)
  // Where it cannot be told which of two plays the treble, both orders are on offer.
  const isUnsure = unsure && more.length === 0
  const corners = cornersFor(kinds.length)
  const ladders = isUnsure
    ? [kinds, [bass, treble, middle]].map((order) => ladder(order, corners[0] ?? []))
    : corners.map((some) => ladder(kinds, some))
  const shared = allStanding(kinds.length === 2 ? TWO_WAY_HZ : [3500], others)
  return [
    ...(kinds.length === 2 ? [] : ladders),
    ...shared.map((hz) => alike(hz, true)),
    ...allStanding([5000], others).map((hz) => alike(hz, false)),
  ]
    .map((bands) => ({ text: textOf(bands), bands }))
    .filter(({ text }, i, all) => all.findIndex((one) => one.text === text) === i)
}

function cornersFor(ways: number): readonly (readonly number[])[] {
  if (ways === 3) return THREE_WAY_HZ
  const { from, to } = MANY_WAY_HZ
  return [Array.from({ length: ways - 1 }, (_, i) => digits(from * (to / from) ** (i / (ways - 2)), 1))]
}

/** No kind is bought for less than half an octave or so. */
const LEAST_BAND = 1.5

/** One after the other; each takes over where it stands it, as far as the notes reach. */
function ladder(kinds: readonly Kind[], cornersHz: readonly number[]): Band[] {
  const standingHz: number[] = []
  for (const [i, hz] of cornersHz.entries())
    standingHz.push(Math.max(standing(hz, kinds[i + 1]?.fsHz ?? 0), (standingHz.at(-1) ?? 0) * LEAST_BAND))
  const corners = standingHz.every((hz) => hz <= LAST_HZ) ? standingHz : cornersHz
  return kinds.map(({ id }, i) => {
    const [fromHz, toHz] = [corners[i - 1], corners[i]]
    return { id, ...(fromHz !== undefined && { fromHz }), ...(toHz !== undefined && { toHz }) }
  })
}

const textOf = (bands: readonly Band[]): string =>
  bands
    .map(({ id, fromHz, toHz }) => {
      if (fromHz !== undefined && toHz !== undefined) return `${id} ${fromHz} to ${toHz} Hz`
      if (toHz !== undefined) return `${id} up to ${toHz} Hz`
      return fromHz === undefined ? `${id} all notes` : `${id} from ${fromHz} Hz`
    })
    .join(', ')
