const PREFIXES = [
  { from: 1e9, sign: 'G' },
  { from: 1e6, sign: 'M' },
  { from: 1e3, sign: 'k' },
] as const

/** Below this and from this on an axis counts in powers of ten. */
const SMALLEST_PLAIN = 1e-4
const LARGEST_PLAIN = 1e12

/** A number without the dust of binary fractions, its minus as long as a plus. */
const plain = (value: number): string => String(Number(value.toPrecision(10))).replace('-', '\u2212')

/**
 * What stands at a tick: `50`, `1 k`, `−45`.
 * @param prefixFrom  size from which a prefix is used: 1000 for frequencies, more where 1500 reads better than 1.5 k
 */
export function tickText(value: number, prefixFrom: number): string {
  const size = Math.abs(value)
  if (size !== 0 && (size < SMALLEST_PLAIN || size >= LARGEST_PLAIN))
    return value.toExponential(1).replace('.0e', 'e').replace('e+', 'e')
  const prefix = size < prefixFrom ? undefined : PREFIXES.find(({ from }) => size >= from)
  return prefix === undefined ? plain(value) : `${plain(value / prefix.from)} ${prefix.sign}`
}
