import type { Sides } from '../../schema/box.ts'
import type { CutListRequest, CutListSections, Hardware } from '../../schema/cut-list.ts'
import type { Brace } from '../../schema/fittings.ts'
import { braceSizeMm } from '../box/braces.ts'
import { say } from '../say.ts'
import type { Back } from './back.ts'
import type { BoxPlan } from './box-plan.ts'
import { ductEdgesMm, ductOf } from './duct.ts'
import type { FrontDriver } from './front-bodies.ts'
import type { Front } from './holes.ts'
import type { Inside } from './inside-facts.ts'
import { frontCovers, gluedEdgesMm } from './joint-panels.ts'
import { glueG } from './mass.ts'
import { screwRows } from './screw-list.ts'
import { wireInsideM } from './wire.ts'

/** Feet of a box. Common practice, no source. */
const FEET = 4
/** Cartridge emptied per metre of joint, mL: a bead of 4 mm. Common practice, no source. */
const SEALANT_ML_PER_M = 12.5

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0)

/** Width of a glued joint, mm: the board, or the bevel of a mitre. Geometry. */
const glueWidthMm = ({ carcass }: BoxPlan): number =>
  carcass.joint === 'mitre' ? carcass.thicknessMm * Math.SQRT2 : carcass.thicknessMm

/** Inner walls without the front, m2 for the whole set. */
function liningAreaM2({ inner, boxes }: BoxPlan): number {
  const { widthMm: w, heightMm: h, depthMm: d } = inner
  return boxes * (w * h + 2 * h * d + 2 * w * d) * 1e-6
}

function liningRows(plan: BoxPlan): Hardware[] {
  if (plan.lining === 'none') return []
  const note =
    plan.lining === 'walls' ? 'On every wall but the front.' : 'To begin with the walls; then fill loosely.'
  return [{ item: 'lining', count: liningAreaM2(plan), unit: 'm2', note }]
}

const bandRows = (lengthM: number, rollM: number | undefined): Hardware[] => [
  { item: 'edge band', count: lengthM, unit: 'm', note: 'Strip as bought, before slitting.' },
  ...(rollM === undefined
    ? []
    : [
        {
          item: 'rolls of edge band',
          count: Math.ceil(lengthM / rollM),
          note: `Of ${say(rollM, 'm')} each.`,
        },
      ]),
]

/** Foam strip under every flange, along the middle between its rim and its cut-out. Geometry. */
function gasketRows(plan: BoxPlan, bolted: readonly FrontDriver[]): Hardware[] {
  const mmEach = bolted.map(({ frame }) => (Math.PI / 2) * (frame.outerDiameterMm + frame.cutoutDiameterMm))
  if (mmEach.length === 0) return []
  const note = 'Under the flanges; putty does as well. It also evens out a rough board.'
  return [{ item: 'foam strip', count: (sum(mmEach) / 1000) * plan.boxes, unit: 'm', note }]
}

function wireRows(plan: BoxPlan, front: Front, back: Back): Hardware[] {
  const { widthMm } = plan.inner
  const panelMm = frontCovers(plan.carcass) ? widthMm + 2 * plan.carcass.thicknessMm : widthMm
  const lengthM = wireInsideM(plan, front, back, panelMm) * plan.boxes
  if (lengthM === 0) return []
  const note =
    'Inside the boxes, to each driver by itself; the lead between the boxes depends on where they stand.'
  return [{ item: 'two-core wire', count: lengthM, unit: 'm', note }]
}

/** Edges of a brace that are glued to walls, mm. Geometry. */
function braceEdgesMm(brace: Brace, inner: Sides): number {
  const [lengthMm, widthMm] = braceSizeMm(brace, inner)
  return 2 * (lengthMm + widthMm)
}

/** Screws, glue and the like for the whole set. Quantities by common practice, no source, where not geometry. */
export function hardwareOf(
  request: CutListRequest,
  plan: BoxPlan,
  front: Front,
  { back, braces }: Inside,
  edging: CutListSections['edging'],
): Hardware[] {
  const duct = ductOf(plan)
  const carcassMm = sum(gluedEdgesMm(plan.carcass)) * plan.boxes
  const ductMm = duct === null ? 0 : ductEdgesMm(duct) * plan.boxes
  const braceMm = braces.reduce((sum, { brace }) => sum + braceEdgesMm(brace, plan.inner), 0) * plan.boxes
  const [, carcassGlueG] = glueG(carcassMm, glueWidthMm(plan))
  const [, insideGlueG] = glueG(ductMm + braceMm, plan.carcass.thicknessMm)
  return [
    ...screwRows(request, plan, [...front.holes, ...back.holes]),
    {
      item: 'white wood glue',
      count: carcassGlueG + insideGlueG,
      unit: 'g',
      note: 'Clamp 30 minutes, full strength after a day. It does not hold on the printed face of laminate.',
    },
    {
      item: 'sealant',
      count: ((carcassMm + ductMm) / 1000) * SEALANT_ML_PER_M,
      unit: 'mL',
      note: 'Neutral-cure or acrylic, on every joint inside, and around leads, control and tube; let it air out before the box is closed.',
    },
    ...gasketRows(plan, [...front.items.drivers, ...back.radiators]),
    ...liningRows(plan),
    ...wireRows(plan, front, back),
    ...(edging === null ? [] : bandRows(edging.stripToBuyMm / 1000, request.workshop?.edging?.rollLengthM)),
    {
      item: 'rubber feet',
      count: FEET * plan.boxes,
      note: 'They grip and stop rattles; they do not isolate bass.',
    },
  ]
}
