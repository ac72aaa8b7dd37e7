import type { Sides } from '../../schema/box.ts'
import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Driver } from '../../schema/driver.ts'
import type { Brace, Fitting } from '../../schema/fittings.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { Port } from '../../schema/port.ts'
import { fittingsL, portBodyL, radiatorBodies, tubeWallAssumption } from '../box/bodies.ts'
import { reachMm } from '../box/elbows.ts'
import { innerOf, outerOf, sidesFaults, volumeL } from '../box/sides.ts'
import type { Fault } from '../outcome.ts'
import { type Carcass, usualRunsThrough } from './joint-panels.ts'
import { outerFromVolume } from './outer-from-volume.ts'
import type { Material } from './screws.ts'

/** Hole for the lead in the back when the workshop does not say, mm. Common practice, no source. */
export const USUAL_LEAD_HOLE_MM = 8

export type Box = NonNullable<CutListRequest['box']>

/** A box with every size settled. */
export interface BoxPlan {
  carcass: Carcass
  inner: Sides
  boxes: number
  material: Material
  lining: NonNullable<Box['lining']>
  drivers: readonly Driver[]
  braces: readonly Brace[]
  fittings: readonly Fitting[]
  port: Port | undefined
  /** Length of the tube, mm; null when nobody could tell. */
  portLengthMm: number | null
  /** How deep the tube goes, from the front face, mm: less than its length where it is bent; null likewise. */
  portReachMm: number | null
  /** Hole for the lead in the back, mm. */
  leadHoleMm: number
  assumptions: Assumption[]
}

interface BoxRule {
  at: string
  broken: (box: Box, thicknessMm: number | undefined) => boolean
  message: string
}

const RULES: readonly BoxRule[] = [
  {
    at: '/box/proportions',
    broken: (box) =>
      box.netVolumeL !== undefined &&
      box.outer === undefined &&
      box.inner === undefined &&
      box.proportions === undefined,
    message: 'a cut list needs sides: give proportions with netVolumeL, or outer or inner sides',
  },
  {
    at: '/box/panelThicknessMm',
    broken: (_, thicknessMm) => thicknessMm === undefined,
    message: 'missing, and the boards on hand do not agree on one thickness',
  },
  {
    at: '/box/runsThrough',
    broken: (box) => box.joint === 'rebate' && box.runsThrough === 'front-back',
    message: 'rebates are cut in the sides or in top and bottom: give sides or top-bottom',
  },
  {
    at: '/box/rebateDepthMm',
    broken: (box, thicknessMm = Infinity) =>
      box.joint === 'rebate' && (box.rebateDepthMm ?? 0) >= thicknessMm,
    message: 'must be less than the board is thick',
  },
  {
    at: '/box/rebateDepthMm',
    broken: (box) => box.rebateDepthMm !== undefined && (box.joint ?? 'butt') !== 'rebate',
    message: 'only a rebate has this depth: give joint "rebate", or leave it out',
  },
  {
    at: '/box/braceL',
    broken: (box) => box.braceL !== undefined && (box.braces ?? []).length > 0,
    message: 'the braces are described: leave their volume out',
  },
]

/** The one thickness of all boards on hand, if they agree, mm. */
export function stockThickness(stock: CutListRequest['stock']): number | undefined {
  const all = new Set(stock.map((board) => board.thicknessMm))
  const [only] = all
  return all.size === 1 ? only : undefined
}

/** What is missing or contradictory in the box of a cut list. */
export function boxFaults(box: Box, stock: CutListRequest['stock']): Fault[] {
  const thicknessMm = box.panelThicknessMm ?? stockThickness(stock)
  const known = thicknessMm === undefined ? box : { ...box, panelThicknessMm: thicknessMm }
  const own = RULES.filter((rule) => rule.broken(box, thicknessMm)).map(({ at, message }) => ({
    at,
    message,
  }))
  const inherited = sidesFaults(known, '/box').filter((fault) => own.every((other) => other.at !== fault.at))
  return [...own, ...inherited]
}

/** Rounds after which sides that hold their own braces no longer change. */
const ROUNDS = 12

/** Everything that stands in the air of one box, litres, without its tubes. */
function bodiesOf(request: CutListRequest, box: Box, inner: Sides | null) {
  const bodies = (request.drivers ?? []).map((driver, index) => ({
    at: `/drivers/${index}`,
    count: driver.count ?? 1,
    frame: driver.frame,
  }))
  return fittingsL(box, [...bodies, ...radiatorBodies(request.passiveRadiator)], inner)
}

function sidesOf(request: CutListRequest, box: Box, thicknessMm: number, lengthMm: number | null) {
  if (box.outer !== undefined) return { outer: box.outer, assumptions: [] }
  if (box.inner !== undefined) return { outer: outerOf(box.inner, thicknessMm), assumptions: [] }
  const known = { ...box, panelThicknessMm: thicknessMm }
  const { assumptions } = bodiesOf(request, known, null)
  const { port } = request
  const proportions = box.proportions ?? { width: 1, height: 1, depth: 1 }
  const outerBeside = (inner: Sides | null) => {
    const bodyL = port === undefined ? 0 : portBodyL(port, lengthMm ?? 0, thicknessMm, inner?.widthMm ?? null)
    const grossL = (box.netVolumeL ?? 0) + bodiesOf(request, known, inner).takenL + (port?.count ?? 1) * bodyL
    return outerFromVolume(grossL, proportions, thicknessMm)
  }
  // Cheeks of a slot and braces depend on the sides, which depend on them: a few rounds settle it.
  let outer = outerBeside(null)
  for (let round = 0; round < ROUNDS; round++) outer = outerBeside(innerOf(outer, thicknessMm))
  return { outer, assumptions }
}

/** The first board on hand that is as thick as the panels, by its index; 0 when there is none. */
export function boardOf(stock: CutListRequest['stock'], thicknessMm: number): number {
  return Math.max(
    0,
    stock.findIndex((board) => (board.thicknessMm ?? thicknessMm) === thicknessMm),
  )
}

/** What panels of a thickness are made of: the board on hand for them; plywood where it does not say. */
export const materialOf = (stock: CutListRequest['stock'], thicknessMm: number): Material =>
  stock[boardOf(stock, thicknessMm)]?.material ?? 'plywood'

function choices(request: CutListRequest, box: Box, thicknessMm: number): Assumption[] {
  const joint = box.joint ?? 'butt'
  const board = boardOf(request.stock, thicknessMm)
  const rows: (Assumption & { given: boolean })[] = [
    {
      given: box.panelThicknessMm !== undefined,
      at: '/box/panelThicknessMm',
      value: thicknessMm,
      unit: 'mm',
      why: 'the thickness of the boards on hand',
    },
    {
      given: box.joint !== undefined,
      at: '/box/joint',
      value: joint,
      unit: '',
      why: 'butt joints forgive most',
    },
    {
      given: box.runsThrough !== undefined,
      at: '/box/runsThrough',
      value: usualRunsThrough(joint),
      unit: '',
      why: joint === 'butt' ? 'the front then covers the edges of the other panels' : 'usual for this joint',
    },
    {
      given: joint !== 'rebate' || box.rebateDepthMm !== undefined,
      at: '/box/rebateDepthMm',
      value: thicknessMm / 2,
      unit: 'mm',
      why: 'half the board; common practice, no source',
    },
    {
      given: request.stock[board]?.material !== undefined,
      at: `/stock/${board}/material`,
      value: 'plywood',
      unit: '',
      why: 'pilot holes and mass need a material; common practice, no source',
    },
  ]
  return rows.filter(({ given }) => !given).map(({ given: _, ...assumption }) => assumption)
}

const reachOf = (port: Port | undefined, lengthMm: number | null, thicknessMm: number): number | null =>
  port === undefined || lengthMm === null ? null : reachMm(port, lengthMm, thicknessMm)

/**
 * Settles the sizes of a box that `boxFaults` found nothing wrong with.
 * @param portLengthMm  length of the tube that the tuning asks for, mm, or null when none is known
 */
export function boxPlan(request: CutListRequest, box: Box, portLengthMm: number | null): BoxPlan {
  const thicknessMm = box.panelThicknessMm ?? stockThickness(request.stock) ?? 0
  const lengthMm = request.port?.lengthMm ?? portLengthMm
  const joint = box.joint ?? 'butt'
  const { outer, assumptions } = sidesOf(request, box, thicknessMm, lengthMm)
  return {
    carcass: {
      outer,
      thicknessMm,
      joint,
      runsThrough: box.runsThrough ?? usualRunsThrough(joint),
      rebateDepthMm: box.rebateDepthMm ?? thicknessMm / 2,
    },
    inner: innerOf(outer, thicknessMm),
    boxes: request.boxes ?? 1,
    material: materialOf(request.stock, thicknessMm),
    lining: box.lining ?? 'none',
    drivers: request.drivers ?? [],
    braces: box.braces ?? [],
    fittings: box.fittings ?? [],
    port: request.port,
    portLengthMm: lengthMm,
    portReachMm: reachOf(request.port, lengthMm, thicknessMm),
    leadHoleMm: request.workshop?.leadHoleMm ?? USUAL_LEAD_HOLE_MM,
    assumptions: [...choices(request, box, thicknessMm), ...assumptions, ...tubeWallAssumption(request.port)],
  }
}

/** Air inside the walls before anything is put in, litres. */
export const grossVolumeL = (plan: BoxPlan): number => volumeL(plan.inner)
