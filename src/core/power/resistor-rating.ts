/** Ratings resistors are sold in, W. Common practice, no source. */
const RATINGS_W = [0.25, 0.5, 1, 2, 5, 10, 17, 25, 50, 100]
/** A resistor is loaded to this share of its rating at most. Common practice, no source. */
const LOAD_SHARE = 0.5

/** The next usual rating that bears a power, W; the power itself beyond them. */
export const usualRatingW = (powerW: number): number => RATINGS_W.find((rating) => powerW <= rating) ?? powerW

/** Rating to buy for a resistor that turns so much into heat, W: the next usual one that is loaded to half. */
export const resistorRatingW = (heatW: number): number => usualRatingW(heatW / LOAD_SHARE)
