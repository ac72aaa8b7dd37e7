import type { Box, Sides } from '../../schema/box.ts'

export type Role = 'front' | 'back' | 'side' | 'top-bottom'
export type Joint = NonNullable<Box['joint']>
export type RunsThrough = NonNullable<Box['runsThrough']>

/** Equal panels of one box. */
export interface JointPanel {
  role: Role
  lengthMm: number
  widthMm: number
  count: number
}

/** Everything about a box that its panels follow from. */
export interface Carcass {
  outer: Sides
  thicknessMm: number
  joint: Joint
  runsThrough: RunsThrough
  rebateDepthMm: number
}

/** Length and width of the sides, of top and bottom, and of front and back. */
interface Sizes {
  side: [number, number]
  topBottom: [number, number]
  frontBack: [number, number]
}

type Recipe = (w: number, h: number, d: number, t: number, r: number) => Sizes

const BUTT = {
  'front-back': (w, h, d, t) => ({
    side: [h, d - 2 * t],
    topBottom: [w - 2 * t, d - 2 * t],
    frontBack: [w, h],
  }),
  sides: (w, h, d, t) => ({
    side: [h, d],
    topBottom: [w - 2 * t, d],
    frontBack: [w - 2 * t, h - 2 * t],
  }),
  'top-bottom': (w, h, d, t) => ({
    side: [h - 2 * t, d],
    topBottom: [w, d],
    frontBack: [w - 2 * t, h - 2 * t],
  }),
} satisfies Record<RunsThrough, Recipe>

const mitreShell: Recipe = (w, h, d, t) => ({
  side: [h, d],
  topBottom: [w, d],
  frontBack: [w - 2 * t, h - 2 * t],
})

/** Front and back that "run through" a mitred box are mitred too: every edge is. */
const MITRE = {
  'front-back': (w, h, d) => ({ side: [h, d], topBottom: [w, d], frontBack: [w, h] }),
  sides: mitreShell,
  'top-bottom': mitreShell,
} satisfies Record<RunsThrough, Recipe>

const REBATE = {
  sides: (w, h, d, t, r) => ({
    side: [h, d],
    topBottom: [w - 2 * t + 2 * r, d],
    frontBack: [w - 2 * t, h - 2 * t],
  }),
  'top-bottom': (w, h, d, t, r) => ({
    side: [h - 2 * t + 2 * r, d],
    topBottom: [w, d],
    frontBack: [w - 2 * t, h - 2 * t],
  }),
  // Refused before the panels are worked out; a rebate in the front would be a butt joint with a lip.
  'front-back': BUTT['front-back'],
} satisfies Record<RunsThrough, Recipe>

const RECIPES = { butt: BUTT, mitre: MITRE, rebate: REBATE } satisfies Record<
  Joint,
  Record<RunsThrough, Recipe>
>

/** Which pair runs through when the request does not say: the front for butt joints, the sides otherwise. */
export const usualRunsThrough = (joint: Joint): RunsThrough => (joint === 'butt' ? 'front-back' : 'sides')

/** Panels of one box at their longest, mm. Geometry; derived. */
export function jointPanels({
  outer,
  thicknessMm,
  joint,
  runsThrough,
  rebateDepthMm,
}: Carcass): JointPanel[] {
  const recipe: Recipe = RECIPES[joint][runsThrough]
  const { widthMm, heightMm, depthMm } = outer
  const { side, topBottom, frontBack } = recipe(widthMm, heightMm, depthMm, thicknessMm, rebateDepthMm)
  const panel = (role: Role, [length, width]: [number, number], count: number): JointPanel => ({
    role,
    lengthMm: length,
    widthMm: width,
    count,
  })
  return [
    panel('front', frontBack, 1),
    panel('back', frontBack, 1),
    panel('side', side, 2),
    panel('top-bottom', topBottom, 2),
  ]
}

/** true when the front covers the edges of the other panels, so that its rim lies on wood. */
export const frontCovers = ({ joint, runsThrough }: Pick<Carcass, 'joint' | 'runsThrough'>): boolean =>
  joint !== 'rebate' && runsThrough === 'front-back'

/** Length of every glued edge of one box, each once, mm. Geometry; derived. */
export function gluedEdgesMm({ outer, thicknessMm: t, joint, runsThrough }: Carcass): number[] {
  const four = (length: number) => [length, length, length, length]
  const { widthMm: w, heightMm: h, depthMm: d } = outer
  if (frontCovers({ joint, runsThrough })) {
    return joint === 'mitre'
      ? [...four(w), ...four(h), ...four(d)]
      : [...four(h), ...four(w - 2 * t), ...four(d - 2 * t)]
  }
  return [...four(d), ...four(w - 2 * t), ...four(h - 2 * t)]
}
