/** Least wood between a hole and a pilot hole, mm. Common practice, no source. */
export const LEAST_LAND_MM = 1.5
/** Least cover of the flange over the rim of the hole, mm. Common practice, no source. */
export const LEAST_COVER_MM = 3
/** More than this all round is not filed but sawn. Common practice, no source. */
const MOST_FILED_MM = 3

/** A round hole that is wanted, and what surrounds it. */
export interface WantedHole {
  diameterMm: number
  boltCircleMm?: number | undefined
  pilotMm?: number | undefined
  flangeMm?: number | undefined
}

export interface SawChoice {
  /** The saw to take; null when none on hand serves: fretsaw, or router on a template. */
  sawMm: number | null
  /** To take off all round with a file after the saw, mm. */
  fileMm: number
  /** How much the hole is larger than wanted, mm. */
  looseMm: number
}

/** Wood between the hole and the pilot holes, mm; Infinity without a bolt circle. Geometry. */
export const landMm = (wanted: WantedHole, holeMm: number): number =>
  wanted.boltCircleMm === undefined ? Infinity : (wanted.boltCircleMm - holeMm - (wanted.pilotMm ?? 0)) / 2

/** How far the flange covers the rim, mm; Infinity without a flange. Geometry. */
export const coverMm = (wanted: WantedHole, holeMm: number): number =>
  wanted.flangeMm === undefined ? Infinity : (wanted.flangeMm - holeMm) / 2

/**
 * The next saw not smaller than the hole, when it leaves the screws enough land and the flange enough cover; else
 * the next smaller one and a file. Common practice, no source.
 * @param sawsMm  saws on hand, any order
 */
export function chooseSaw(wanted: WantedHole, sawsMm: readonly number[]): SawChoice {
  const sorted = [...sawsMm].sort((a, b) => a - b)
  const above = sorted.find((saw) => saw >= wanted.diameterMm)
  const serves = (saw: number) =>
    saw === wanted.diameterMm ||
    (landMm(wanted, saw) >= LEAST_LAND_MM && coverMm(wanted, saw) >= LEAST_COVER_MM)
  if (above !== undefined && serves(above)) {
    return { sawMm: above, fileMm: 0, looseMm: above - wanted.diameterMm }
  }
  const below = sorted.findLast((saw) => saw < wanted.diameterMm)
  const fileMm = below === undefined ? Infinity : (wanted.diameterMm - below) / 2
  if (above === undefined || below === undefined || fileMm > MOST_FILED_MM) {
    return { sawMm: null, fileMm: 0, looseMm: 0 }
  }
  return { sawMm: below, fileMm, looseMm: 0 }
}
