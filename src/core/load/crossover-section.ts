import type { Driver } from '../../schema/driver.ts'
import type { CrossoverWish, LoadImpedanceSections } from '../../schema/load-impedance.ts'
import { type ComplexCurve, moduli, pointOf } from '../complex-curve.ts'
import { cleanOutput } from '../power/amplifier.ts'
import type { CompleteAmplifier } from '../power/amplifier-defaults.ts'
import { speakerLead } from '../power/cable.ts'
import { cornerHz } from '../power/coupling.ts'
import { E12, nearestPreferred } from '../power/preferred-values.ts'
import { resistorRatingW } from '../power/resistor-rating.ts'
import { firstOrder, pad, padHeatW, secondOrder, zobel } from './crossover.ts'
import { trebleIndex } from './crossover-wiring.ts'
import type { KnownDrivers } from './known-drivers.ts'
import { networkImpedance } from './network.ts'

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
  const hz = frequencyHz.subarray(corner, corner + 1)
  const treble = trebleIndex(drivers)
  return drivers.flatMap((driver, index) => {
    const impedance = impedances.get(driver.id)
    const reOhm = resistances.get(driver.id)
    return impedance === undefined || reOhm === undefined
      ? []
      : [
          partsFor(
            wish,
            driver,
            reOhm,
            { impedance: pointOf(impedance, corner), hz },
            amplifier,
            index === treble,
          ),
        ]
  })
}

function partsFor(
  wish: CrossoverWish,
  driver: Driver,
  reOhm: number,
  atCorner: AtCorner,
  amplifier: CompleteAmplifier | undefined,
  isTreble: boolean,
): Parts {
  const { leMh = 0 } = driver.parameters
  const flat = leMh < LEAST_INDUCTANCE_MH ? undefined : zobel(reOhm, leMh)
  const loadOhm = loadOhmOf(atCorner, flat)
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

/** A driver at the one point of the grid that is the corner, or nearest to it. */
interface AtCorner {
  impedance: ComplexCurve
  hz: Float64Array
}

/** What the filter works into: the driver, a Zobel across it where there is one, which leaves the resonance as it is. */
function loadOhmOf({ impedance, hz }: AtCorner, flat: ReturnType<typeof zobel> | undefined): number {
  const zobelParts =
    flat === undefined
      ? []
      : [{ series: [{ resistorOhm: flat.resistorOhm }, { capacitorUf: flat.capacitorUf }] }]
  const wiring = { parallel: ['driver', ...zobelParts] }
  const [ohm = 0] = moduli(networkImpedance(wiring, new Map([['driver', impedance]]), hz))
  return ohm
}

function nearestIndex(frequencyHz: Float64Array, wantedHz: number): number {
  let nearest = 0
  frequencyHz.forEach((frequency, index) => {
    if (Math.abs(frequency - wantedHz) < Math.abs(frequencyHz[nearest]! - wantedHz)) nearest = index
  })
  return nearest
}
