import type { Wiring } from '../../schema/wiring.ts'
import { partsOf } from './wiring-parts.ts'

/** Pairs that are looked at; more parts than that make no wiring one could solder. */
const MOST_PAIRS = 64
/** Points about a resonance, as ratios: a notch as sharp as a good coil makes it lies within a per cent. */
const ABOUT = [0.97, 0.985, 0.995, 1, 1.005, 1.015, 1.03] as const

/** Frequencies at which some coil and some capacitor of a wiring cancel, Hz: f = 1/(2π√(LC)), Thomson 1853. */
function cancellingHz(wiring: Wiring): number[] {
  const parts = partsOf(wiring).flatMap(({ part }) => (typeof part === 'string' ? [] : [part]))
  const coilsH = parts.flatMap((part) => ('inductorMh' in part ? [part.inductorMh * 1e-3] : []))
  const capacitorsF = parts.flatMap((part) => ('capacitorUf' in part ? [part.capacitorUf * 1e-6] : []))
  const pairs = coilsH.flatMap((coil) =>
    capacitorsF.map((capacitor) => 1 / (2 * Math.PI * Math.sqrt(coil * capacitor))),
  )
  return [...new Set(pairs)].slice(0, MOST_PAIRS)
}

/**
 * A grid on which no notch of a wiring hides: `base` (rising, Hz) with the resonances of its coils and capacitors put
 * in, and `alsoHz`, where something else is judged. `base` itself where there is nothing to put in.
 */
export function judgingGrid(
  base: Float64Array,
  wiring: Wiring | undefined,
  alsoHz: readonly number[] = [],
): Float64Array {
  const [first, last] = [base[0]!, base[base.length - 1]!]
  const notches =
    wiring === undefined ? [] : cancellingHz(wiring).flatMap((hz) => ABOUT.map((ratio) => hz * ratio))
  const inside = [...notches, ...alsoHz].filter((hz) => hz > first && hz < last)
  if (inside.length === 0) return base
  return Float64Array.from(new Set([...base, ...inside])).sort()
}
