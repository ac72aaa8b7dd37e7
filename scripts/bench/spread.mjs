// Order statistics of what was measured: a machine that is shared drifts, so means say little.

/** Value below which a share of the values lies. */
export function percentile(values, share) {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]
}

export const median = (values) => percentile(values, 0.5)

/** Median with the 20th and the 80th percentile behind it. */
export const spread = (values, digits = 2) =>
  `${median(values).toFixed(digits)} [${percentile(values, 0.2).toFixed(digits)} to ${percentile(values, 0.8).toFixed(digits)}]`
