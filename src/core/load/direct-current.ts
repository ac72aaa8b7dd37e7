import type { Wiring } from '../../schema/wiring.ts'

/**
 * What a resistance meter reads across a wiring, ohm: capacitors open, coils their resistance, drivers their voice
 * coil, the lead in series.
 * @returns null when a capacitor stops direct current on every path
 * Source: Kirchhoff's laws.
 */
export function meterReadingOhm(
  wiring: Wiring,
  resistances: ReadonlyMap<string, number>,
  leadOhm = 0,
): number | null {
  const reading = directResistance(wiring, resistances) + leadOhm
  return Number.isFinite(reading) ? reading : null
}

/** Open is Infinity and a short is 0 inside: the sums of Kirchhoff then come out right by themselves. */
function directResistance(wiring: Wiring, resistances: ReadonlyMap<string, number>): number {
  if (typeof wiring === 'string') return resistances.get(wiring) ?? Number.POSITIVE_INFINITY
  if ('series' in wiring)
    return wiring.series.reduce((total, branch) => total + directResistance(branch, resistances), 0)
  if ('parallel' in wiring)
    return 1 / wiring.parallel.reduce((total, branch) => total + 1 / directResistance(branch, resistances), 0)
  if ('resistorOhm' in wiring) return wiring.resistorOhm
  return 'inductorMh' in wiring ? (wiring.resistanceOhm ?? 0) : Number.POSITIVE_INFINITY
}
