/** A front panel and where the sound leaves it, from its centre, millimetres. */
export interface Baffle {
  widthMm: number
  heightMm: number
  sourceXMm: number
  sourceYMm: number
}

const DIRECTIONS = 360

/** Distance from the source to the edge of the panel in each of 360 directions, metres. */
function edgeDistances(baffle: Baffle): Float64Array {
  const distances = new Float64Array(DIRECTIONS)
  for (let i = 0; i < DIRECTIONS; i++) {
    const angle = (2 * Math.PI * (i + 0.5)) / DIRECTIONS
    const [x, y] = [Math.cos(angle), Math.sin(angle)]
    const toSide = ((baffle.widthMm / 2) * Math.sign(x) - baffle.sourceXMm) / x
    const toTop = ((baffle.heightMm / 2) * Math.sign(y) - baffle.sourceYMm) / y
    distances[i] = Math.min(toSide, toTop) / 1000
  }
  return distances
}

/**
 * Gain on axis of a point source in a flat front panel over the same source in full space, dB, one a frequency:
 * 0 dB at low frequency, about 6 dB above the step. First-order edge model; the step is a band, not a sharp figure.
 * Source: |2 − (1/2π)∮ e^(−jkR) dθ|, derived; cf. J. Vanderkooy, J. Audio Eng. Soc. 39, 923 (1991).
 */
export function baffleGainDb(baffle: Baffle, frequencyHz: Float64Array, speedMPerS: number): Float64Array {
  const distances = edgeDistances(baffle)
  const gain = new Float64Array(frequencyHz.length)
  for (let i = 0; i < frequencyHz.length; i++) {
    const k = (2 * Math.PI * frequencyHz[i]!) / speedMPerS
    let re = 0
    let im = 0
    for (let j = 0; j < DIRECTIONS; j++) {
      re += Math.cos(k * distances[j]!)
      im -= Math.sin(k * distances[j]!)
    }
    gain[i] = 20 * Math.log10(Math.hypot(2 - re / DIRECTIONS, im / DIRECTIONS))
  }
  return gain
}

/** A response solved for full space with the step of its front panel added; unchanged without a panel. */
export function withBaffle<R extends { splDb: Float64Array }>(
  response: R,
  baffle: Baffle | null,
  frequencyHz: Float64Array,
  speedMPerS: number,
): R {
  if (baffle === null) return response
  const gain = baffleGainDb(baffle, frequencyHz, speedMPerS)
  return { ...response, splDb: response.splDb.map((level, i) => level + gain[i]!) }
}
