import type { Driver, DriverFrame } from '../../schema/driver.ts'
import type { PassiveRadiator } from '../../schema/port.ts'
import type { Fault } from '../outcome.ts'
import { mm, say } from '../say.ts'

interface FrameRule {
  /** Pointer below the driver. */
  at: string
  broken: (frame: DriverFrame, sdCm2: number | undefined) => boolean
  message: (frame: DriverFrame) => string
}

/** Area of the circle that the flange fills, cm². Geometry. */
const flangeAreaCm2 = ({ outerDiameterMm }: DriverFrame): number => (Math.PI / 400) * outerDiameterMm ** 2

const FRAME_RULES: readonly FrameRule[] = [
  {
    at: '/frame/cutoutDiameterMm',
    broken: ({ cutoutDiameterMm, outerDiameterMm }) => cutoutDiameterMm >= outerDiameterMm,
    message: ({ outerDiameterMm }) =>
      `must be less than outerDiameterMm, ${mm(outerDiameterMm)}: else the driver falls through its hole`,
  },
  {
    at: '/frame/boltCircleDiameterMm',
    broken: ({ boltCircleDiameterMm, cutoutDiameterMm }) =>
      boltCircleDiameterMm !== undefined && boltCircleDiameterMm <= cutoutDiameterMm,
    message: ({ cutoutDiameterMm }) =>
      `must be more than cutoutDiameterMm, ${mm(cutoutDiameterMm)}: else the screws find no wood`,
  },
  {
    at: '/frame/boltCircleDiameterMm',
    broken: ({ boltCircleDiameterMm, outerDiameterMm }) =>
      boltCircleDiameterMm !== undefined && boltCircleDiameterMm >= outerDiameterMm,
    message: ({ outerDiameterMm }) =>
      `must be less than outerDiameterMm, ${mm(outerDiameterMm)}: the screws go through the flange`,
  },
  {
    at: '/frame/magnetDiameterMm',
    broken: ({ magnetDiameterMm, cutoutDiameterMm }) =>
      magnetDiameterMm !== undefined && magnetDiameterMm > cutoutDiameterMm,
    message: ({ cutoutDiameterMm }) =>
      `must be at most cutoutDiameterMm, ${mm(cutoutDiameterMm)}: a larger magnet cannot pass the hole from the front`,
  },
  {
    at: '/frame/flangeThicknessMm',
    broken: ({ flangeThicknessMm, depthMm }) =>
      flangeThicknessMm !== undefined && flangeThicknessMm >= depthMm,
    message: ({ depthMm }) => `must be less than depthMm, ${mm(depthMm)}, which counts from its front face`,
  },
  {
    at: '/parameters/sdCm2',
    broken: (frame, sdCm2) => sdCm2 !== undefined && sdCm2 > flangeAreaCm2(frame),
    message: (frame) => `cannot exceed the area of the flange, ${say(flangeAreaCm2(frame), 'cm2')}`,
  },
]

const brokenAt = (at: string, frame: DriverFrame | undefined, sdCm2: number | undefined): Fault[] =>
  frame === undefined
    ? []
    : FRAME_RULES.filter((rule) => rule.broken(frame, sdCm2)).map((rule) => ({
        at: `${at}${rule.at}`,
        message: rule.message(frame),
      }))

/** Frames that no driver can have, as faults below `/drivers`; a driver without a frame has none. Geometry. */
export const frameFaults = (drivers: readonly Driver[]): Fault[] =>
  drivers.flatMap(({ frame, parameters }, index) => brokenAt(`/drivers/${index}`, frame, parameters.sdCm2))

/** The same of the frame of a passive radiator. */
export const radiatorFrameFaults = (radiator: PassiveRadiator | undefined): Fault[] =>
  brokenAt('/passiveRadiator', radiator?.frame, undefined)
