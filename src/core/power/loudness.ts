/** Level that is harmless for eight hours a day, dB(A), and the step that halves the time. NIOSH, seen. */
export const SAFE_LEVEL_DB = 85
const HALVING_DB = 3
const SAFE_HOURS = 8

/** Hours a day at a level: 8 h at 85 dB(A), halved for each 3 dB; 24 at most. NIOSH recommended limit, seen. */
export const safeHoursADay = (levelDb: number): number =>
  Math.min(24, SAFE_HOURS * 2 ** ((SAFE_LEVEL_DB - levelDb) / HALVING_DB))

/**
 * Level at the listener, dB re 20 µPa: sensitivity for 1 W at 1 m, power, number of equal sources, distance.
 * Uncorrelated sources and free spread without a room, so a room is a few dB louder. Definition of the decibel.
 */
export const levelAtListenerDb = (
  sensitivity1W1mDb: number,
  powerW: number,
  sources: number,
  distanceM: number,
): number => sensitivity1W1mDb + 10 * Math.log10(powerW * sources) - 20 * Math.log10(distanceM)
