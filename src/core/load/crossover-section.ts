import type { Driver } from '../../schema/driver.ts'
import type { CrossoverWish, LoadImpedanceSections } from '../../schema/load-impedance.ts'
import { cornerHz } from '../power/coupling.ts'
import { E12, nearestPreferred } from '../power/preferred-values.ts'
import { firstOrder, pad, secondOrder, zobel } from './crossover.ts'
import type { KnownDrivers } from './known-drivers.ts'
import type { ComplexCurve } from './network.ts'

type Parts = LoadImpedanceSections['crossover'][number]

/** Below a thousandth of a microhenry there is no inductance to flatten. */
const LEAST_INDUCTANCE_MH = 1e-6

/** Parts of a simple crossover for each kind of driver; none when none is wished. */
export function crossoverSection(
  wish: CrossoverWish | undefined,
  drivers: readonly Driver[],
  { impedances, resistances }: KnownDrivers,
  frequencyHz: Float64Array,
): Parts[] {
  if (wish === undefined) return []
  const corner = nearestIndex(frequencyHz, wish.cornerHz)
  return drivers.flatMap((driver) => {
    const impedance = impedances.get(driver.id)
    const reOhm = resistances.get(driver.id)
    return impedance === undefined || reOhm === undefined
      ? []
      : [partsFor(wish, driver, reOhm, modulusAt(impedance, corner))]
  })
}

function partsFor(wish: CrossoverWish, driver: Driver, reOhm: number, impedanceOhm: number): Parts {
  const { leMh = 0 } = driver.parameters
  const flat = leMh < LEAST_INDUCTANCE_MH ? undefined : zobel(reOhm, leMh)
  // With its Zobel a driver is a pure resistance; without it only the impedance at the corner counts.
  const loadOhm = flat === undefined ? impedanceOhm : reOhm
  const parts =
    wish.order === 2
      ? secondOrder(wish.cornerHz, loadOhm, 'Linkwitz-Riley')
      : firstOrder(wish.cornerHz, loadOhm)
  const quieter = wish.attenuationDb === undefined ? undefined : pad(wish.attenuationDb, loadOhm)
  const capacitorE12Uf = nearestPreferred(parts.capacitorUf, E12)
  return {
    driver: driver.id,
    loadOhm,
    ...parts,
    capacitorE12Uf,
    cornerWithItHz: cornerHz(capacitorE12Uf, loadOhm),
    zobelOhm: flat?.resistorOhm ?? null,
    zobelUf: flat?.capacitorUf ?? null,
    padSeriesOhm: quieter?.seriesOhm ?? null,
    padShuntOhm: quieter?.shuntOhm ?? null,
  }
}

const modulusAt = ({ re, im }: ComplexCurve, index: number) => Math.hypot(re[index]!, im[index]!)

function nearestIndex(frequencyHz: Float64Array, wantedHz: number): number {
  let nearest = 0
  frequencyHz.forEach((frequency, index) => {
    if (Math.abs(frequency - wantedHz) < Math.abs(frequencyHz[nearest]! - wantedHz)) nearest = index
  })
  return nearest
}
