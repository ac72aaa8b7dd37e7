/**
 * Repeatable random numbers in [0, 1) from a whole-number seed (xorshift, 32 bits).
 * Source: G. Marsaglia, Xorshift RNGs, J. Statistical Software 8(14), 2003.
 */
export function randomFrom(seed: number): () => number {
  let state = seed | 0 || 1
  return () => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return (state >>> 0) / 4294967296
  }
}
