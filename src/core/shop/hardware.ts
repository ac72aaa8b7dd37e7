import type { CutListRequest, CutListSections, Hardware } from '../../schema/cut-list.ts'
import { mm, say } from '../say.ts'
import type { BoxPlan } from './box-plan.ts'
import { ductEdgesMm, ductOf } from './duct.ts'
import type { Front } from './holes.ts'
import { gluedEdgesMm } from './joint-panels.ts'
import { glueG } from './mass.ts'
import { countersinkMm, edgeScrews } from './screws.ts'

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

function screwRows(request: CutListRequest, plan: BoxPlan, front: Front): Hardware[] {
  const panelScrews = plan.carcass.joint === 'mitre' ? 0 : sum(gluedEdgesMm(plan.carcass).map(edgeScrews))
  const screw = request.workshop?.screws?.panel
  // Heads are about twice the shank: common practice, no source.
  const sunk = screw?.countersunk
    ? ` Countersink ${mm(countersinkMm(2 * screw.diameterMm, screw.diameterMm))}.`
    : ''
  const driverScrews = front.holes.filter((hole) => hole.kind === 'bolt').length
  return [
    ...(screw !== undefined && panelScrews > 0
      ? [
          {
            item: 'panel screws',
            count: panelScrews * plan.boxes,
            note: `At least 70 mm from every corner, 150 mm apart at most; drill pilots.${sunk}`,
          },
        ]
      : []),
    ...(driverScrews > 0
      ? [
          {
            item: 'driver screws',
            count: driverScrews * plan.boxes,
            note: 'Drive by hand: the pilot strips easily.',
          },
        ]
      : []),
  ]
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

/** Screws, glue and the like for the whole set. Quantities by common practice, no source, where not geometry. */
export function hardwareOf(
  request: CutListRequest,
  plan: BoxPlan,
  front: Front,
  edging: CutListSections['edging'],
): Hardware[] {
  const duct = ductOf(plan)
  const carcassMm = sum(gluedEdgesMm(plan.carcass)) * plan.boxes
  const ductMm = duct === null ? 0 : ductEdgesMm(duct) * plan.boxes
  const [, carcassGlueG] = glueG(carcassMm, glueWidthMm(plan))
  const [, ductGlueG] = glueG(ductMm, plan.carcass.thicknessMm)
  return [
    ...screwRows(request, plan, front),
    {
      item: 'white wood glue',
      count: carcassGlueG + ductGlueG,
      unit: 'g',
      note: 'Clamp 30 minutes, full strength after a day. It does not hold on the printed face of laminate.',
    },
    {
      item: 'sealant',
      count: ((carcassMm + ductMm) / 1000) * SEALANT_ML_PER_M,
      unit: 'mL',
      note: 'Neutral-cure or acrylic, on every joint inside, and around leads, control and tube.',
    },
    ...liningRows(plan),
    ...(edging === null ? [] : bandRows(edging.stripToBuyMm / 1000, request.workshop?.edging?.rollLengthM)),
    {
      item: 'rubber feet',
      count: FEET * plan.boxes,
      note: 'They grip and stop rattles; they do not isolate bass.',
    },
  ]
}
