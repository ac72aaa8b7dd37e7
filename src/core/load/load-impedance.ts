import type { Driver } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { LoadImpedanceRequest, LoadImpedanceSections } from '../../schema/load-impedance.ts'
import type { Wiring } from '../../schema/wiring.ts'
import { type LoadFacts, loadRules } from '../findings/load.ts'
import { apply, cautionsOf } from '../findings/rule.ts'
import type { Fault, Outcome, Refusal } from '../outcome.ts'
import { stageLoadOhm } from '../power/amplifier.ts'
import { type CompleteAmplifier, completeAmplifier } from '../power/amplifier-defaults.ts'
import { meterReadingOhm } from './direct-current.ts'
import { driverResistanceOhm, resistiveImpedance } from './driver-resistance.ts'
import { type ComplexCurve, type Network, solveNetwork } from './network.ts'
import { otherWirings } from './other-wirings.ts'
import { composedRatedOhm, lowestOfRatedOhm, ratedFromMinimumOhm } from './rated-impedance.ts'
import { driverShares, lowestIndex } from './shares.ts'
import { channelsThatFit, repeatedIds, wiringFaults } from './wiring-faults.ts'
import { partsOf } from './wiring-parts.ts'
import { loadWorking } from './working.ts'

/** Frequency below which a tweeter should get next to nothing is the low end of the grid; this share is too much. */
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
  if ('faults' in wired) return wired
  const known = impedancesOf(request.drivers, impedances, frequencyHz)
  if ('faults' in known) return known
  const { wiring } = wired
  const given = request.amplifier === undefined ? undefined : completeAmplifier(request.amplifier)
  const leadOhm = request.leadOhm ?? 0
  const network = solveNetwork(wiring, known.impedances, frequencyHz, leadOhm)
  const lowest = lowestIndex(network)
  const load = loadSection(request, wiring, known, network, frequencyHz, given?.amplifier)
  const sections: LoadImpedanceSections = {
    load,
    shares: driverShares(network, known.impedances, frequencyHz, lowest),
    alternatives: otherWirings({
      wiring,
      network,
      lowest,
      impedances: known.impedances,
      rated: ratedOf(request.drivers),
      frequencyHz,
      leadOhm,
      amplifier: given?.amplifier,
    }),
    loadCurve: curveSection(network, frequencyHz),
  }
  const facts: LoadFacts = {
    ...sections,
    at: request.wiring === undefined ? '/drivers' : '/wiring',
    leadOhm,
    isFilter: partsOf(wiring).some(
      ({ part }) => typeof part !== 'string' && ('inductorMh' in part || 'capacitorUf' in part),
    ),
    tweetersWithBass: tweetersWithBass(request.drivers, network),
  }
  return {
    sections,
    findings: apply(loadRules, facts),
    assumptions: [
      ...wired.assumptions,
      ...known.assumptions,
      ...(given?.assumptions ?? []),
      ...coilAssumptions(request.wiring),
    ],
    cautions: cautionsOf(loadRules, facts),
    working: loadWorking(load, wiring, known.resistances),
  }
}

function wiringOf(
  { drivers, wiring, amplifier }: LoadImpedanceRequest,
  channelsPerBox: number | undefined,
): { wiring: Wiring; assumptions: Assumption[] } | Refusal {
  if (wiring === undefined) return assumedWiring(drivers, channelsPerBox ?? 1)
  const channels = channelsPerBox ?? channelsThatFit(wiring, drivers, amplifier?.channels ?? 2)
  // Without boxes there is nothing that a count left out could contradict: it follows from the wiring.
  const counted =
    channelsPerBox === undefined ? drivers.map((driver) => withCount(driver, wiring, channels)) : drivers
  const faults = wiringFaults(wiring, counted, channels)
  return faults.length > 0 ? { faults } : { wiring, assumptions: [] }
}

function withCount(driver: Driver, wiring: Wiring, channels: number): Driver {
  const named = partsOf(wiring).filter(({ part }) => part === driver.id).length
  return driver.count === undefined ? { ...driver, count: Math.max(1, named * channels) } : driver
}

function assumedWiring(
  drivers: readonly Driver[],
  channelsPerBox: number,
): { wiring: Wiring; assumptions: Assumption[] } | Refusal {
  const [only, ...others] = drivers
  const count = (only?.count ?? 1) / channelsPerBox
  if (only === undefined || others.length > 0)
    return {
      faults: [
        { at: '/wiring', message: 'There are different drivers; say how they are wired.' },
        ...repeatedIds(drivers),
      ],
    }
  if (!Number.isInteger(count))
    return {
      faults: [{ at: '/drivers/0/count', message: `It cannot be divided over ${channelsPerBox} channels.` }],
    }
  if (count === 1) return { wiring: only.id, assumptions: [] }
  return {
    wiring: { parallel: Array.from({ length: count }, () => only.id) },
    assumptions: [
      { at: '/wiring', value: 'parallel', unit: '', why: 'no wiring was given; all drivers in parallel' },
    ],
  }
}

interface KnownDrivers {
  impedances: Map<string, ComplexCurve>
  resistances: Map<string, number>
  assumptions: Assumption[]
}

function impedancesOf(
  drivers: readonly Driver[],
  handedIn: ReadonlyMap<string, ComplexCurve>,
  frequencyHz: Float64Array,
): KnownDrivers | Refusal {
  const impedances = new Map(handedIn)
  const resistances = new Map<string, number>()
  const assumptions: Assumption[] = []
  const faults: Fault[] = []
  drivers.forEach((driver, index) => {
    const at = `/drivers/${index}/parameters/reOhm`
    const impedance = handedIn.get(driver.id) ?? resistiveImpedance(driver, frequencyHz)
    if (impedance === undefined) {
      faults.push({ at, message: 'Give reOhm, or ratedImpedanceOhm as printed on the driver.' })
      return
    }
    // The motion of the cone only ever adds to the resistance, so the lowest real part is close to it.
    const resistance = driverResistanceOhm(driver) ?? impedance.re.reduce((a, b) => Math.min(a, b))
    impedances.set(driver.id, impedance)
    resistances.set(driver.id, resistance)
    if (driver.parameters.reOhm === undefined)
      assumptions.push({
        at,
        value: resistance,
        unit: 'ohm',
        why: 'taken from the rated impedance or the impedance curve: 8 ohm reads about 7',
      })
  })
  return faults.length > 0 ? { faults } : { impedances, resistances, assumptions }
}

const ratedOf = (drivers: readonly Driver[]): Map<string, number> =>
  new Map(
    drivers.flatMap(({ id, parameters }) =>
      parameters.ratedImpedanceOhm === undefined ? [] : [[id, parameters.ratedImpedanceOhm] as const],
    ),
  )

function loadSection(
  { drivers, leadOhm = 0 }: LoadImpedanceRequest,
  wiring: Wiring,
  { resistances }: KnownDrivers,
  network: Network,
  frequencyHz: Float64Array,
  amplifier: CompleteAmplifier | undefined,
): LoadImpedanceSections['load'] {
  const lowest = lowestIndex(network)
  const minimumOhm = Math.hypot(network.re[lowest]!, network.im[lowest]!)
  const allowedMinimumOhm = amplifier === undefined ? null : lowestOfRatedOhm(amplifier.minimumLoadOhm)
  return {
    meterOhm: meterReadingOhm(wiring, resistances, leadOhm),
    ratedOhm: composedRatedOhm(wiring, ratedOf(drivers)) ?? ratedFromMinimumOhm(minimumOhm),
    minimumOhm,
    minimumAtHz: frequencyHz[lowest]!,
    phaseAtMinimumDeg: phaseDeg(network, lowest),
    steepestPhaseDeg: steepestPhaseDeg(network),
    stageOhm: stageLoadOhm(amplifier?.output ?? 'bridge', minimumOhm),
    mayDrive: allowedMinimumOhm === null ? null : minimumOhm >= allowedMinimumOhm * (1 - 1e-9),
    allowedMinimumOhm,
  }
}

const phaseDeg = ({ re, im }: ComplexCurve, index: number): number =>
  (Math.atan2(im[index]!, re[index]!) * 180) / Math.PI

function steepestPhaseDeg(network: ComplexCurve): number {
  let steepest = 0
  for (let i = 0; i < network.re.length; i++) {
    const phase = phaseDeg(network, i)
    if (Math.abs(phase) > Math.abs(steepest)) steepest = phase
  }
  return steepest
}

const curveSection = (
  network: ComplexCurve,
  frequencyHz: Float64Array,
): LoadImpedanceSections['loadCurve'] => ({
  frequencyHz: [...frequencyHz],
  impedanceOhm: Array.from(network.re, (re, i) => Math.hypot(re, network.im[i]!)),
  phaseDeg: Array.from(network.re, (_, i) => phaseDeg(network, i)),
})

function tweetersWithBass(drivers: readonly Driver[], { places }: Network): string[] {
  const closedBacks = drivers.filter(({ sharesBox }) => sharesBox === false).map(({ id }) => id)
  return closedBacks.filter((id) =>
    places.some(
      (place) => place.driver === id && Math.hypot(place.re[0]!, place.im[0]!) > BASS_SHARE_TOO_MUCH,
    ),
  )
}

function coilAssumptions(wiring: Wiring | undefined): Assumption[] {
  if (wiring === undefined) return []
  return partsOf(wiring).flatMap(({ pointer, part }) =>
    typeof part !== 'string' && 'inductorMh' in part && part.resistanceOhm === undefined
      ? [{ at: `/wiring${pointer}/resistanceOhm`, value: 0, unit: 'ohm', why: 'the coil is taken as ideal' }]
      : [],
  )
}
