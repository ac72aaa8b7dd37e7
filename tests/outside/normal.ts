/** Normal errors from even ones in [0, 1): G. E. P. Box and M. E. Muller, Ann. Math. Stat. 29 (1958), from memory. */
export const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
