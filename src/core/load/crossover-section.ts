import type { Driver } from '../../schema/driver.ts'
import type { CrossoverWish, LoadImpedanceSections } from '../../schema/load-impedance.ts'
import { cleanOutput } from '../power/amplifier.ts'
import type { CompleteAmplifier } from '../power/amplifier-defaults.ts'
import { speakerLead } from '../power/cable.ts'
import { cornerHz } from '../power/coupling.ts'
import { E12, nearestPreferred } from '../power/preferred-values.ts'
import { resistorRatingW } from '../power/resistor-rating.ts'
import { firstOrder, pad, padHeatW, secondOrder, zobel } from './crossover.ts'
import { trebleIndex } from './crossover-wiring.ts'
import type { KnownDrivers } from './known-drivers.ts'
import type { ComplexCurve } from './network.ts'

type Parts = LoadImpedanceSections['crossover'][number]

/** Below a microhenry there is no inductance to flatten. */
const LEAST_INDUCTANCE_MH = 1e-3

/** Parts of a simple crossover for each kind of driver; none when none is wished. */
export function crossoverSection(
  wish: CrossoverWish | undefined,
  drivers: readonly Driver[],
  { impedances, resistances }: KnownDrivers,
  frequencyHz: Float64Array,
  amplifier: CompleteAmplifier | undefined,
): Parts[] {
  if (wish === undefined) return []
  const corner = nearestIndex(frequencyHz, wish.cornerHz)
  const treble = trebleIndex(drivers)
  return drivers.flatMap((driver, index) => {
    const impedance = impedances.get(driver.id)
    const reOhm = resistances.get(driver.id)
    return impedance === undefined || reOhm === undefined
      ? []
      : [partsFor(wish, driver, reOhm, atPoint(impedance, frequencyHz, corner), amplifier, index === treble)]
  })
}

function partsFor(
  wish: CrossoverWish,
  driver: Driver,
  reOhm: number,
  impedance: AtFrequency,
  amplifier: CompleteAmplifier | undefined,
  isTreble: boolean,
): Parts {
  const { leMh = 0 } = driver.parameters
  const flat = leMh < LEAST_INDUCTANCE_MH ? undefined : zobel(reOhm, leMh)
  const loadOhm = modulus(flat === undefined ? impedance : besideZobel(impedance, flat))
  const parts =
    wish.order === 2
      ? secondOrder(wish.cornerHz, loadOhm, 'Linkwitz-Riley')
      : firstOrder(wish.cornerHz, loadOhm)
  const capacitorE12Uf = nearestPreferred(parts.capacitorUf, E12)
  return {
    driver: driver.id,
    loadOhm,
    ...parts,
    capacitorE12Uf,
    cornerWithItHz:
      wish.order === 2 ? resonanceHz(capacitorE12Uf, parts.inductorMh) : cornerHz(capacitorE12Uf, loadOhm),
    zobelOhm: flat?.resistorOhm ?? null,
    zobelUf: flat?.capacitorUf ?? null,
    ...padOf(wish.attenuationDb, loadOhm, amplifier),
    // The coil is in series with the bass alone; across the treble it takes nothing that is heard.
    coilLossDb:
      wish.coilResistanceOhm === undefined || isTreble
        ? null
        : -speakerLead(wish.coilResistanceOhm, loadOhm, reOhm).lossDb,
  }
}

type PadFields = Pick<Parts, 'padSeriesOhm' | 'padShuntOhm' | 'padSeriesW' | 'padShuntW' | 'padRatingW'>

function padOf(
  attenuationDb: number | undefined,
  loadOhm: number,
  amplifier: CompleteAmplifier | undefined,
): PadFields {
  if (attenuationDb === undefined)
    return { padSeriesOhm: null, padShuntOhm: null, padSeriesW: null, padShuntW: null, padRatingW: null }
  const { seriesOhm, shuntOhm } = pad(attenuationDb, loadOhm)
  const ohms = { padSeriesOhm: seriesOhm, padShuntOhm: shuntOhm }
  if (amplifier?.supplyVoltageV === undefined)
    return { ...ohms, padSeriesW: null, padShuntW: null, padRatingW: null }
  const { powerW } = cleanOutput(amplifier, amplifier.supplyVoltageV, loadOhm)
  const { seriesW, shuntW } = padHeatW(attenuationDb, powerW)
  // On music, an eighth of the sine, a resistor rated for the sine is far below half its rating.
  const padRatingW = resistorRatingW(Math.max(seriesW, shuntW) / 2)
  return { ...ohms, padSeriesW: seriesW, padShuntW: shuntW, padRatingW }
}

/** f = 1/(2π√(LC)), Thomson 1853. */
const resonanceHz = (capacitorUf: number, inductorMh: number): number =>
  1 / (2 * Math.PI * Math.sqrt(capacitorUf * 1e-6 * inductorMh * 1e-3))

interface Complex {
  re: number
  im: number
}

interface AtFrequency extends Complex {
  hz: number
}

const atPoint = ({ re, im }: ComplexCurve, frequencyHz: Float64Array, index: number): AtFrequency => ({
  hz: frequencyHz[index]!,
  re: re[index]!,
  im: im[index]!,
})

const modulus = ({ re, im }: Complex): number => Math.hypot(re, im)

/** A driver with its Zobel across it: a pure resistance but for what is left of its resonance at the corner. */
function besideZobel(driver: AtFrequency, { resistorOhm, capacitorUf }: ReturnType<typeof zobel>): Complex {
  const reactance = -1 / (2 * Math.PI * driver.hz * capacitorUf * 1e-6)
  const sum = { re: driver.re + resistorOhm, im: driver.im + reactance }
  const product = {
    re: driver.re * resistorOhm - driver.im * reactance,
    im: driver.re * reactance + driver.im * resistorOhm,
  }
  const inverse = 1 / (sum.re * sum.re + sum.im * sum.im)
  return {
    re: (product.re * sum.re + product.im * sum.im) * inverse,
    im: (product.im * sum.re - product.re * sum.im) * inverse,
  }
}

function nearestIndex(frequencyHz: Float64Array, wantedHz: number): number {
  let nearest = 0
  frequencyHz.forEach((frequency, index) => {
    if (Math.abs(frequency - wantedHz) < Math.abs(frequencyHz[nearest]! - wantedHz)) nearest = index
  })
  return nearest
}
