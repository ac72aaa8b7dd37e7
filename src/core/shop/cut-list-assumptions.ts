import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Assumption } from '../../schema/frame.ts'
import { USUAL_DIAMETER_MM } from '../power/indicator.ts'
import { type BoxPlan, boardOf, USUAL_LEAD_HOLE_MM } from './box-plan.ts'
import {
  drillingOf,
  USUAL_BODY_MM,
  USUAL_BOLT_COUNT,
  USUAL_BUSH_MM,
  USUAL_DRIVER_SCREW_MM,
} from './driver-holes.ts'
import { USUAL_OVERHANG_MM } from './edging.ts'
import { USUAL_SHAFT_MM } from './front-bodies.ts'
import { bushPocket } from './inside-fit.ts'

/** A table saw with a thin blade, mm: 3/32 inch. */
export const USUAL_KERF_MM = 2.4

interface Row extends Assumption {
  /** true when the value was filled in. */
  filled: boolean
}

const onlyFilled = (rows: readonly Row[]): Assumption[] =>
  rows.filter(({ filled }) => filled).map(({ filled: _, ...assumption }) => assumption)

/** The boards of plain parts that are weighed without a material being given, by their index. */
const unnamedBoards = ({ parts = [], stock }: CutListRequest): number[] => {
  const weighed = parts.flatMap(({ thicknessMm }) => (thicknessMm === undefined ? [] : [thicknessMm]))
  const boards = new Set(weighed.map((thicknessMm) => boardOf(stock, thicknessMm)))
  return [...boards].filter((board) => stock[board]?.material === undefined)
}

/** What was filled in about boards, saw and edging. */
export function workshopAssumptions(request: CutListRequest): Assumption[] {
  const edging = request.workshop?.edging
  return onlyFilled([
    ...unnamedBoards(request).map((board) => ({
      filled: true,
      at: `/stock/${board}/material`,
      value: 'plywood',
      unit: '',
      why: 'the mass of parts needs a material; common practice, no source',
    })),
    {
      filled: request.workshop?.kerfMm === undefined,
      at: '/workshop/kerfMm',
      value: USUAL_KERF_MM,
      unit: 'mm',
      why: 'a thin table saw blade, 3/32 inch; measure a test cut',
    },
    {
      filled: request.box !== undefined && edging !== undefined && edging.overhangMm === undefined,
      at: '/workshop/edging/overhangMm',
      value: USUAL_OVERHANG_MM,
      unit: 'mm',
      why: 'left over at each end before trimming; common practice, no source',
    },
    {
      filled: request.box !== undefined && edging !== undefined && edging.edges === undefined,
      at: '/workshop/edging/edges',
      value: 'front',
      unit: '',
      why: 'the edges seen from the front',
    },
  ])
}

const hasPocket = (request: CutListRequest, plan: BoxPlan): boolean => {
  const { thicknessMm, bushMm } = drillingOf(request, plan)
  return bushPocket(thicknessMm, bushMm).pocketMm > 0
}

/** What was filled in about the holes of a box. */
export function boxAssumptions(request: CutListRequest, plan: BoxPlan, webMm: number): Assumption[] {
  const control = request.signal?.volumeControl
  const indicator = request.supply?.indicator
  const bolted = plan.drivers.findIndex(
    ({ frame }) => frame?.boltCircleDiameterMm !== undefined && frame.boltCount === undefined,
  )
  return onlyFilled([
    {
      filled: request.workshop?.leastWebMm === undefined,
      at: '/workshop/leastWebMm',
      value: webMm,
      unit: 'mm',
      why: '8 mm or the board, whichever is more; common practice, no source',
    },
    {
      filled: control !== undefined && control.shaftDiameterMm === undefined,
      at: '/signal/volumeControl/shaftDiameterMm',
      value: USUAL_SHAFT_MM,
      unit: 'mm',
      why: 'the usual hole for the bush of a small control; common practice, no source',
    },
    {
      filled: control !== undefined && control.bushLengthMm === undefined,
      at: '/signal/volumeControl/bushLengthMm',
      value: USUAL_BUSH_MM,
      unit: 'mm',
      why: 'the usual threaded bush of a small control, which sets its pocket; common practice, no source',
    },
    {
      filled: control !== undefined && control.bodyDiameterMm === undefined && hasPocket(request, plan),
      at: '/signal/volumeControl/bodyDiameterMm',
      value: USUAL_BODY_MM,
      unit: 'mm',
      why: 'the usual small control, which sets the width of its pocket; common practice, no source',
    },
    {
      filled: indicator !== undefined && indicator.diameterMm === undefined,
      at: '/supply/indicator/diameterMm',
      value: USUAL_DIAMETER_MM,
      unit: 'mm',
      why: 'the small usual lamp; common practice, no source',
    },
    {
      filled: bolted >= 0,
      at: `/drivers/${Math.max(bolted, 0)}/frame/boltCount`,
      value: USUAL_BOLT_COUNT,
      unit: '',
      why: 'four screws are usual; common practice, no source',
    },
    {
      filled:
        plan.drivers.some(({ frame }) => frame?.boltCircleDiameterMm !== undefined) &&
        request.workshop?.screws?.driver === undefined,
      at: '/workshop/screws/driver/diameterMm',
      value: USUAL_DRIVER_SCREW_MM,
      unit: 'mm',
      why: 'the usual screw of small drivers, for the pilot; common practice, no source',
    },
    {
      filled: plan.port?.slot !== undefined && plan.port.slot.onWall === undefined,
      at: '/port/slot/onWall',
      value: false,
      unit: '',
      why: 'the slot stands free of the walls, as its tuning reckons too',
    },
    {
      filled: request.workshop?.leadHoleMm === undefined,
      at: '/workshop/leadHoleMm',
      value: USUAL_LEAD_HOLE_MM,
      unit: 'mm',
      why: 'a hole for the lead, low in the back; common practice, no source',
    },
    {
      filled: request.box?.grain === undefined,
      at: '/box/grain',
      value: 'any',
      unit: '',
      why: 'panels may be turned against the grain: small ones are strong enough either way; common practice, no source',
    },
  ])
}
