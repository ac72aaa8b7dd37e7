import { digits } from './digits.ts'
import { type Draft, type Json, valueAt, withValue } from './draft.ts'
import { litresOf, mmOf } from './length-written.ts'

export type SizeWay = 'outer' | 'inner' | 'netVolumeL'
export type TubeWay = 'tuningHz' | 'lengthMm'

/** Proportions where none are said. Common practice, no source. */
export const USUAL = { width: 1, height: 1.6, depth: 1.25 }
const START_L = 3
const START_TUBE = { tuningHz: 80, lengthMm: 60 }

/** The way the size is given. A field that was emptied is still the way that was chosen, so the past tells. */
export const sizeWayOf = (draft: Draft, past: readonly Draft[] = []): SizeWay =>
  lastOf([...past, draft], sizeWayIn) ?? 'netVolumeL'

export const tubeWayOf = (draft: Draft, past: readonly Draft[] = []): TubeWay =>
  lastOf([...past, draft], tubeWayIn) ?? 'tuningHz'

function sizeWayIn(draft: Draft): SizeWay | undefined {
  const has = (name: string) => valueAt(draft, `/box/${name}`) !== undefined
  if (has('outer')) return 'outer'
  if (has('inner')) return 'inner'
  return has('netVolumeL') || has('proportions') ? 'netVolumeL' : undefined
}

const tubeWayIn = (draft: Draft): TubeWay | undefined =>
  (['lengthMm', 'tuningHz'] as const).find((way) => valueAt(draft, `/port/${way}`) !== undefined)

const lastOf = <Found>(drafts: readonly Draft[], find: (draft: Draft) => Found | undefined) =>
  drafts.map(find).findLast((found) => found !== undefined)

const SIZE = ['outer', 'inner', 'netVolumeL', 'proportions']
const sizeIn = (draft: Draft): readonly (Json | undefined)[] =>
  SIZE.map((name) => valueAt(draft, `/box/${name}`))

const withSize = (draft: Draft, size: Readonly<Record<string, Json | undefined>>): Draft =>
  SIZE.reduce((now, name) => withValue(now, `/box/${name}`, size[name]), draft)

/** The box without any size. */
export const unsized = (draft: Draft): Draft => withSize(draft, {})

/**
 * The size given in another way: as it was the last time if no measure was typed since, else worked out from the
 * measures that are there, through the thickness of the board. Undefined where these are not all there, or written so
 * that this page cannot read them: a wrong box would be worse than none.
 */
export function sizedBy(draft: Draft, way: SizeWay, past: readonly Draft[]): Draft | undefined {
  if (sizeWayOf(draft, past) === way) return draft
  const steps = [...past, draft]
  const before = steps.findLastIndex((step) => sizeWayIn(step) === way)
  const then = steps[before]
  if (then !== undefined && !isTyped(steps.slice(before)))
    return withSize(draft, Object.fromEntries(SIZE.map((name, i) => [name, sizeIn(then)[i]])))
  if (sizeWayIn(draft) === undefined)
    return withSize(draft, sizeFrom(litres(START_L, USUAL), way, thicknessOf(draft) || 0))
  const computed = converted(draft, way)
  return computed && withSize(draft, computed)
}

/** Whether a size was changed within one way of giving it. */
const isTyped = (steps: readonly Draft[]): boolean =>
  steps.some((step, i) => {
    const next = steps[i + 1]
    return (
      next !== undefined &&
      sizeWayIn(step) === sizeWayIn(next) &&
      JSON.stringify(sizeIn(step)) !== JSON.stringify(sizeIn(next))
    )
  })

interface Sides {
  widthMm: number
  heightMm: number
  depthMm: number
}

const mapSides = ({ widthMm, heightMm, depthMm }: Sides, change: (mm: number) => number): Sides => ({
  widthMm: change(widthMm),
  heightMm: change(heightMm),
  depthMm: change(depthMm),
})

/** The size that is there in another way; undefined where it is not known in full. */
function converted(draft: Draft, way: SizeWay) {
  const inner = innerOf(draft)
  const thicknessMm = thicknessOf(draft)
  const isBox = inner !== undefined && Object.values(inner).every((mm) => mm > 0 && Number.isFinite(mm))
  const isKnown = isBox && (way !== 'outer' || thicknessMm > 0)
  return isKnown ? sizeFrom(inner, way, thicknessMm) : undefined
}

function innerOf(draft: Draft): Sides | undefined {
  const now = sizeWayIn(draft)
  if (now === 'netVolumeL') {
    const share = (name: 'width' | 'height' | 'depth') =>
      Number(valueAt(draft, `/box/proportions/${name}`) ?? USUAL[name])
    const volumeL = litresOf(valueAt(draft, '/box/netVolumeL'))
    return litres(volumeL, { width: share('width'), height: share('height'), depth: share('depth') })
  }
  if (now === undefined) return undefined
  const side = (name: string) => mmOf(valueAt(draft, `/box/${now}/${name}`))
  const sides = { widthMm: side('widthMm'), heightMm: side('heightMm'), depthMm: side('depthMm') }
  return now === 'inner' ? sides : mapSides(sides, (mm) => mm - 2 * thicknessOf(draft))
}

/** Inner sides of a volume in these proportions. */
function litres(volumeL: number, { width, height, depth }: typeof USUAL): Sides {
  const unitMm = Math.cbrt((volumeL * 1e6) / (width * height * depth))
  return { widthMm: unitMm * width, heightMm: unitMm * height, depthMm: unitMm * depth }
}

function sizeFrom(inner: Sides, way: SizeWay, thicknessMm: number): Readonly<Record<string, Json>> {
  if (way !== 'netVolumeL') {
    const wallsMm = way === 'outer' ? 2 * thicknessMm : 0
    return { [way]: { ...mapSides(inner, (mm) => Math.round(mm + wallsMm)) } }
  }
  const { widthMm, heightMm, depthMm } = inner
  return {
    netVolumeL: digits((widthMm * heightMm * depthMm) / 1e6, 3),
    proportions: { width: 1, height: digits(heightMm / widthMm, 3), depth: digits(depthMm / widthMm, 3) },
  }
}

const thicknessOf = (draft: Draft): number => mmOf(valueAt(draft, '/box/panelThicknessMm'))

/** Tuning or length of the tube, as it was the last time. */
export function tubeBy(draft: Draft, way: TubeWay, past: readonly Draft[]): Draft {
  if (tubeWayOf(draft, past) === way) return draft
  const before = lastOf(past, (step) => valueAt(step, `/port/${way}`)) ?? START_TUBE[way]
  const other = way === 'lengthMm' ? 'tuningHz' : 'lengthMm'
  return withValue(withValue(draft, `/port/${way}`, before), `/port/${other}`, undefined)
}
