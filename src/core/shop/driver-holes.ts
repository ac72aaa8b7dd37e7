import type { CutListRequest } from '../../schema/cut-list.ts'
import type { DriverFrame } from '../../schema/driver.ts'
import type { Hole } from '../../schema/panel.ts'
import { mm } from '../say.ts'
import { boltPositions, type Point, usualFirstAngleDeg } from './bolt-circle.ts'
import type { BoxPlan } from './box-plan.ts'
import type { FrontDriver } from './front-bodies.ts'
import { chooseSaw, type SawChoice, type WantedHole } from './hole-saw.ts'
import { coreMm, leadBitMm, pilotDepthMm } from './screws.ts'

/** Screw for drivers when the request names none, mm. Common practice, no source. */
export const USUAL_DRIVER_SCREW_MM = 3
/** Bush of a control when the request does not say, mm. Common practice, no source. */
export const USUAL_BUSH_MM = 7
/** Body of a control when the request does not say, mm. Common practice, no source. */
export const USUAL_BODY_MM = 17
/** Screws of a driver that names a bolt circle but no number. Common practice, no source. */
export const USUAL_BOLT_COUNT = 4

/** What a round hole has no measure of. */
export const ROUND = { slotWidthMm: null, slotHeightMm: null }

/** Everything a hole depends on besides the thing that goes through it. */
export interface Drilling {
  thicknessMm: number
  pilotMm: number
  /** Length of the driver screws on hand, mm; Infinity when none are named. */
  screwMm: number
  /** Saws on hand; null when the request names none. */
  sawsMm: readonly number[] | null
  bushMm: number
  /** Body of the control, mm. */
  bodyMm: number
}

/** What the workshop and the board say about drilling. */
export function drillingOf(request: CutListRequest, plan: BoxPlan): Drilling {
  const { thicknessMm } = plan.carcass
  const screw = request.workshop?.screws?.driver
  return {
    thicknessMm,
    pilotMm: leadBitMm(coreMm(screw?.diameterMm ?? USUAL_DRIVER_SCREW_MM), plan.material),
    screwMm: screw?.lengthMm ?? Infinity,
    sawsMm: request.workshop?.holeSawsMm ?? null,
    bushMm: request.signal?.volumeControl?.bushLengthMm ?? USUAL_BUSH_MM,
    bodyMm: request.signal?.volumeControl?.bodyDiameterMm ?? USUAL_BODY_MM,
  }
}

/** A driver's cut-out as the choice of a saw sees it. */
export const wantedFor = (frame: DriverFrame, pilotMm: number): WantedHole => ({
  diameterMm: frame.cutoutDiameterMm,
  boltCircleMm: frame.boltCircleDiameterMm,
  pilotMm,
  flangeMm: frame.outerDiameterMm,
})

/** The choice among the saws on hand; when none are named, a saw of just the size. */
export const sawFor = (wanted: WantedHole, sawsMm: readonly number[] | null): SawChoice =>
  chooseSaw(wanted, sawsMm ?? [wanted.diameterMm])

/** How to saw a hole of a size with the saw chosen. */
export function sawNote({ sawMm, fileMm, looseMm }: SawChoice, wantedMm: number): string {
  if (sawMm === null)
    return `No hole saw on hand serves: fretsaw, or router on a template, to ${mm(wantedMm)}.`
  const loose = looseMm > 0 ? ` It is ${mm(looseMm)} wide: centre with care and seal the gap.` : ''
  const filed = fileMm > 0 ? ` Then file ${mm(fileMm)} all round to ${mm(wantedMm)}.` : ''
  return `Hole saw ${mm(sawMm)}: pilot right through, then from each face to the middle.${filed}${loose}`
}

/** The cut-out of a driver or a passive radiator and, where its bolt circle is known, its screws. */
export function driverHoles(
  kind: 'driver' | 'radiator',
  driver: FrontDriver,
  centre: Point,
  drilling: Drilling,
): Hole[] {
  const { frame } = driver
  const choice = sawFor(wantedFor(frame, drilling.pilotMm), drilling.sawsMm)
  const bolts = frame.boltCount ?? USUAL_BOLT_COUNT
  const cutout: Hole = {
    id: driver.id,
    kind,
    ...centre,
    ...ROUND,
    diameterMm: driver.holeMm,
    drillMm: choice.sawMm,
    toolNote: sawNote(choice, frame.cutoutDiameterMm),
    through: true,
    depthMm: drilling.thicknessMm,
  }
  if (frame.boltCircleDiameterMm === undefined) return [cutout]
  const depthMm = pilotDepthMm(drilling.thicknessMm, drilling.screwMm, frame.flangeThicknessMm ?? 0)
  const positions = boltPositions(frame.boltCircleDiameterMm, bolts, usualFirstAngleDeg(bolts))
  return [
    cutout,
    ...positions.map(
      ({ xMm, yMm }, index): Hole => ({
        id: `${driver.id} screw ${index + 1}`,
        kind: 'bolt',
        xMm: centre.xMm + xMm,
        yMm: centre.yMm + yMm,
        ...ROUND,
        diameterMm: drilling.pilotMm,
        drillMm: drilling.pilotMm,
        toolNote: `Blind: tape on the bit at ${mm(depthMm)}. Mark from the ${kind} itself.`,
        through: false,
        depthMm,
      }),
    ),
  ]
}
