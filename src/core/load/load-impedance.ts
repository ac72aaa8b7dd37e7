import type { Driver } from '../../schema/driver.ts'
import type { LoadImpedanceRequest, LoadImpedanceSections } from '../../schema/load-impedance.ts'
import type { Wiring } from '../../schema/wiring.ts'
import { type ComplexCurve, moduli, phasesDeg } from '../complex-curve.ts'
import { crossoverRules } from '../findings/crossover.ts'
import { driverInLoadRules, type LoadFacts, loadRules } from '../findings/load.ts'
import { apply, cautionsOf } from '../findings/rule.ts'
import { plain } from '../numbers.ts'
import { isRefusal, type Outcome, type Refusal } from '../outcome.ts'
import { stageLoadOhm } from '../power/amplifier.ts'
import { type CompleteAmplifier, completeAmplifier } from '../power/amplifier-defaults.ts'
import { amplifierFaults } from '../power/contradictions.ts'
import { crossoverSection } from './crossover-section.ts'
import { trebleIndex } from './crossover-wiring.ts'
import { meterReadingOhm } from './direct-current.ts'
import { coilAssumptions, wiringOf } from './given-wiring.ts'
import { impedancesOf, type KnownDrivers, printsOf, ratedOf } from './known-drivers.ts'
import { type Network, networkImpedance, solveNetwork } from './network.ts'
import { otherWirings } from './other-wirings.ts'
import { lowestOfRatedOhm, mayDrive, ratedLoadOhm } from './rated-impedance.ts'
import { driverShares, lowestIndex, midRangeIndex, ownBandShares } from './shares.ts'
import { partsOf } from './wiring-parts.ts'
import { loadWorking } from './working.ts'

const RULES = [...loadRules, ...crossoverRules]

/** Share of the voltage that a tweeter must not get at the low end of the grid. Common practice, no source. */
const BASS_SHARE_TOO_MUCH = 0.3

/**
 * What an amplifier sees of a wiring of drivers and components, what each driver gets, and other wirings.
 * @param request      drivers, wiring, amplifier; wiring left out means one driver alone or all of a kind in parallel
 * @param impedances   impedance of each driver in its box, ohm on the grid; kinds left out are taken as resistances
 * @param frequencyHz  the grid, Hz, rising
 * @param channelsPerBox  channels that end in one box; found from the counts when left out
 */
export function loadImpedance(
  request: LoadImpedanceRequest,
  impedances: ReadonlyMap<string, ComplexCurve>,
  frequencyHz: Float64Array,
  channelsPerBox?: number,
): Outcome<LoadImpedanceSections> | Refusal {
  const wired = wiringOf(request, channelsPerBox)
  const known = impedancesOf(request.drivers, impedances, frequencyHz)
  const faults = [
    ...[wired, known].flatMap((part) => (isRefusal(part) ? part.faults : [])),
    ...amplifierFaults(request.amplifier),
  ]
  if (isRefusal(wired) || isRefusal(known) || faults.length > 0) return { faults }
  const { wiring } = wired
  const given = request.amplifier === undefined ? undefined : completeAmplifier(request.amplifier)
  const leadOhm = request.leadOhm ?? 0
  const network = solveNetwork(wiring, known.impedances, frequencyHz, leadOhm)
  const compared = midRangeIndex(network, frequencyHz)
  const isFilter = holdsFilter(wiring)
  const curve = curveSection(network, frequencyHz)
  const load = loadSection(request, wiring, known, curve, lowestIndex(network), given?.amplifier)
  const sections: LoadImpedanceSections = {
    load,
    shares: isFilter
      ? ownBandShares(network, known.impedances, frequencyHz)
      : driverShares(network, known.impedances, frequencyHz, compared),
    alternatives: otherWirings({
      wiring,
      network,
      compared,
      impedances: known.impedances,
      rated: ratedOf(request.drivers),
      frequencyHz,
      leadOhm,
      amplifier: given?.amplifier,
    }),
    loadCurve: curve,
    crossover: crossoverSection(request.crossover, request.drivers, known, frequencyHz, given?.amplifier),
  }
  const facts: LoadFacts = {
    at: request.wiring === undefined ? '/drivers' : '/wiring',
    leadOhm,
    isFilter,
    crossoverOrder: request.crossover === undefined ? null : (request.crossover.order ?? 1),
    cornerHz: request.crossover?.cornerHz ?? null,
    treble: trebleOf(request.drivers),
    tweetersWithBass: tweetersWithBass(request.drivers, network),
    // Last: adding members to a copied object takes longer than all the rest.
    ...sections,
  }
  return {
    sections,
    findings: [
      ...apply(RULES, facts),
      ...printsOf(request.drivers).flatMap((print) => apply(driverInLoadRules, print)),
    ],
    assumptions: [
      ...wired.assumptions,
      ...known.assumptions,
      ...(given?.assumptions ?? []),
      ...coilAssumptions(request.wiring),
    ],
    cautions: cautionsOf(RULES, facts),
    working: loadWorking(load, wiring, known.resistances),
  }
}

/** Impedance of the same load on another grid, for the part of the curve that a client asks for. */
export function loadCurve(
  request: LoadImpedanceRequest,
  impedances: ReadonlyMap<string, ComplexCurve>,
  frequencyHz: Float64Array,
): LoadImpedanceSections['loadCurve'] | Refusal {
  const wired = wiringOf(request, undefined)
  if (isRefusal(wired)) return wired
  const known = impedancesOf(request.drivers, impedances, frequencyHz)
  if (isRefusal(known)) return known
  return curveSection(
    networkImpedance(wired.wiring, known.impedances, frequencyHz, request.leadOhm ?? 0),
    frequencyHz,
  )
}

function loadSection(
  { drivers, leadOhm = 0 }: LoadImpedanceRequest,
  wiring: Wiring,
  { resistances }: KnownDrivers,
  { frequencyHz, impedanceOhm, phaseDeg }: LoadImpedanceSections['loadCurve'],
  lowest: number,
  amplifier: CompleteAmplifier | undefined,
): LoadImpedanceSections['load'] {
  const minimumOhm = impedanceOhm[lowest]!
  const allowedMinimumOhm = amplifier === undefined ? null : lowestOfRatedOhm(amplifier.minimumLoadOhm)
  return {
    meterOhm: meterReadingOhm(wiring, resistances, leadOhm),
    ratedOhm: ratedLoadOhm(wiring, ratedOf(drivers), minimumOhm),
    minimumOhm,
    minimumAtHz: frequencyHz[lowest]!,
    phaseAtMinimumDeg: phaseDeg[lowest]!,
    steepestPhaseDeg: farthestFromZero(phaseDeg),
    stageOhm: stageLoadOhm(amplifier?.output ?? 'bridge', minimumOhm),
    mayDrive: amplifier === undefined ? null : mayDrive(minimumOhm, amplifier.minimumLoadOhm),
    allowedMinimumOhm,
  }
}

const farthestFromZero = (values: readonly number[]): number => {
  let farthest = 0
  for (const value of values) if (Math.abs(value) > Math.abs(farthest)) farthest = value
  return farthest
}

const curveSection = (
  network: ComplexCurve,
  frequencyHz: Float64Array,
): LoadImpedanceSections['loadCurve'] => ({
  frequencyHz: plain(frequencyHz),
  impedanceOhm: moduli(network),
  phaseDeg: phasesDeg(network),
})

const holdsFilter = (wiring: Wiring): boolean =>
  partsOf(wiring).some(
    ({ part }) => typeof part !== 'string' && ('inductorMh' in part || 'capacitorUf' in part),
  )

/** The driver that plays the treble, with its resonance where that is known. */
function trebleOf(drivers: readonly Driver[]): LoadFacts['treble'] {
  const index = trebleIndex(drivers)
  const driver = index === undefined ? undefined : drivers[index]
  const fsHz = driver?.parameters.fsHz
  if (index === undefined || driver === undefined || fsHz === undefined) return null
  return { at: `/drivers/${index}/parameters/fsHz`, id: driver.id, fsHz }
}

function tweetersWithBass(drivers: readonly Driver[], { places }: Network): string[] {
  const closedBacks = drivers.filter(({ sharesBox }) => sharesBox === false).map(({ id }) => id)
  return closedBacks.filter((id) =>
    places.some(
      (place) => place.driver === id && Math.hypot(place.re[0]!, place.im[0]!) > BASS_SHARE_TOO_MUCH,
    ),
  )
}
