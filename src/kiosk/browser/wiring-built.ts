import type { LoadImpedanceSections } from '../../schema/load-impedance.ts'
import { type Answer, ask, designCheck } from './ask.ts'
import { digits } from './digits.ts'
import { type Draft, type Json, valueAt, withValue } from './draft.ts'
import { type Kind, kindsOf } from './kinds.ts'
import { sentence } from './sentence.ts'
import type { Band, Plan } from './wiring-plans.ts'
import { branchesOf, isEven, isFair } from './wiring-tree.ts'

/** Of a coil in common wire: air up to a millihenry, iron above. Common practice, no source. */
const COIL_OHM = 0.3

/** A plan with its parts, and what the service says of the design wired so; no answer while other things are missing. */
export interface Built {
  wiring: Json
  answer?: Answer
}

type Load = LoadImpedanceSections
type Curve = Pick<Load['loadCurve'], 'frequencyHz' | 'impedanceOhm'>

/**
 * A plan as the service sizes and judges it: the loudest way that the amplifier may drive, else the lightest load.
 * Rejects with a sentence where it cannot be built.
 */
export async function built(plan: Plan, draft: Draft, signal: AbortSignal): Promise<Built> {
  const kinds = kindsOf(draft).filter(({ id }) => plan.bands.some((band) => band.id === id))
  const groups = await Promise.all(kinds.map((kind) => waysOf(kind, draft)))
  const tries = Math.max(1, ...groups.map(({ length }) => length))
  for (let lighter = 0; ; lighter += 1) {
    const chosen = groups.map((ways) => ways[lighter] ?? ways.at(-1))
    const one = await judged(draft, await wiringOf(plan, kinds, chosen, draft), signal)
    if (one.answer?.load.mayDrive !== false) return one
    if (lighter + 1 < tries) continue
    const other =
      plan.kept === undefined &&
      one.answer.alternatives.find((way) => way.mayDrive && isFair(plainly(way.wiring)))
    return other ? judged(draft, plainly(other.wiring), signal) : one
  }
}

/** How the equal drivers of a kind can hang together, each getting the same: what the amplifier may drive, loudest first. */
async function waysOf({ driver, each, id }: Kind, draft: Draft): Promise<Json[]> {
  const { load, alternatives } = await loadOf({ drivers: [ofCount(driver, each)] }, draft)
  const all = [
    { ...load, wiring: each === 1 ? id : { parallel: Array.from({ length: each }, () => id) } },
    ...alternatives.map((one) => ({ ...one, wiring: plainly(one.wiring) })),
  ].filter(({ wiring }) => isEven(wiring))
  const allowed = all.filter(({ mayDrive }) => mayDrive !== false)
  const lightest = [...all].sort((a, b) => b.ratedOhm - a.ratedOhm).slice(0, 1)
  return (allowed.length > 0 ? allowed : lightest).map(({ wiring }) => wiring)
}

/** The branches with coil and capacitor before each group. */
async function wiringOf(
  { bands, kept }: Plan,
  kinds: readonly Kind[],
  groups: readonly (Json | undefined)[],
  draft: Draft,
): Promise<Json> {
  const branches = await Promise.all(
    kinds.map(async (kind, index) => {
      const [band, group] = [bands.find(({ id }) => id === kind.id), groups[index] ?? kind.id]
      return band === undefined ? group : branchOf(band, kind, group, draft)
    }),
  )
  const all = [...(kept === undefined ? [] : branchesOf(kept, 'parallel')), ...branches]
  return all.length === 1 && all[0] !== undefined ? all[0] : { parallel: all }
}

async function branchOf(
  { fromHz, toHz }: Band,
  { id, driver, each }: Kind,
  group: Json,
  draft: Draft,
): Promise<Json> {
  if (fromHz === undefined && toHz === undefined) return group
  const { loadCurve } = await loadOf({ drivers: [ofCount(driver, each)], wiring: group }, draft)
  const parts: Json[] = []
  if (toHz !== undefined) {
    const { inductorMh } = await partsFor(id, loadCurve, toHz, draft)
    parts.push({ inductorMh: digits(inductorMh, 2), resistanceOhm: COIL_OHM })
  }
  if (fromHz !== undefined) {
    const { capacitorE12Uf } = await partsFor(id, loadCurve, fromHz, draft)
    parts.push({ capacitorUf: capacitorE12Uf })
  }
  return { series: [...parts, ...branchesOf(group, 'series')] }
}

/** Parts for what the group is at the corner, all its drivers together. */
async function partsFor(
  id: string,
  curve: Curve,
  cornerHz: number,
  draft: Draft,
): Promise<Load['crossover'][number]> {
  const reOhm = ohmAt(curve, cornerHz)
  const { crossover } = await loadOf(
    { drivers: [{ id, parameters: { reOhm } }], crossover: { cornerHz } },
    draft,
  )
  const [parts] = crossover
  if (parts === undefined) throw new Error('The service sizes no parts for it.')
  return parts
}

function ohmAt({ frequencyHz, impedanceOhm }: Curve, hz: number): number {
  const above = frequencyHz.findIndex((frequency) => frequency >= hz)
  return impedanceOhm.at(above) ?? 0
}

const ofCount = (driver: Json, count: number): Json =>
  typeof driver === 'object' && driver !== null ? { ...driver, count } : driver

const plainly = (wiring: unknown): Json => JSON.parse(JSON.stringify(wiring))

/** What was asked for one state of the design, so that a touch after a look asks nothing anew. */
let asked = { of: '', replies: new Map<string, Promise<Load>>() }

function loadOf(request: Record<string, Json>, draft: Draft): Promise<Load> {
  const of = JSON.stringify([valueAt(draft, '/drivers'), valueAt(draft, '/amplifier')])
  if (asked.of !== of) asked = { of, replies: new Map() }
  const amplifier = valueAt(draft, '/amplifier') ?? {}
  const body = { ...request, amplifier: ofChannels(amplifier) }
  const key = JSON.stringify(body)
  const { replies } = asked
  const known = replies.get(key)
  if (known !== undefined) return known
  const reply = loadAnswer(body)
  replies.set(key, reply)
  reply.catch(() => replies.delete(key))
  return reply
}

/** One channel is looked at by itself. */
const ofChannels = (amplifier: Json): Json =>
  typeof amplifier === 'object' && amplifier !== null ? { ...amplifier, channels: 1 } : amplifier

async function loadAnswer(body: unknown): Promise<Load> {
  // Never given up: the reply is kept for the touch that may come after the look.
  const reply = await ask<Load>('/v1/load-impedance', body, new AbortController().signal)
  if ('answer' in reply) return reply.answer
  throw 'faults' in reply ? new Error(reply.faults.map(sentence).join(' ')) : awayError(reply.away)
}

/** Faults leave a wiring without an answer, for other things are missing; a service that is away has judged nothing. */
async function judged(draft: Draft, wiring: Json, signal: AbortSignal): Promise<Built> {
  const reply = await designCheck(withValue(draft, '/wiring', wiring), signal)
  if ('away' in reply) throw awayError(reply.away)
  return 'answer' in reply ? { wiring, answer: reply.answer } : { wiring }
}

const AWAY = 'away'

const awayError = (away: string): Error => new Error(`${away} Try again in a moment.`, { cause: AWAY })

/** Whether a plan was not built only because the service was away or busy. */
export const isAway = (error: unknown): boolean => error instanceof Error && error.cause === AWAY
