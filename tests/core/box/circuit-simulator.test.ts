import { describe, expect, it } from 'vitest'
import { groupOf, type Loudspeaker, loudspeaker, type Opening } from '../../../src/core/box/loudspeaker.ts'
import { solveLoudspeaker } from '../../../src/core/box/solve-loudspeaker.ts'
import { completeDriver } from '../../../src/core/driver/complete.ts'
import { C, type NetlistCase, netlistOf, RHO } from '../../outside/loudspeaker-netlist.ts'
import { NETLIST_CASES } from '../../outside/netlist-cases.ts'
import { modulus, phaseDeg, runAc } from '../../outside/simulator.ts'

const AIR = { speedMPerS: C, densityKgPerM3: RHO }

function openingOf({ vent }: NetlistCase): Opening {
  if (vent === null) return null
  if (vent.kind === 'radiator') {
    const { kind: _, ...radiator } = vent
    return { kind: 'radiator', radiator }
  }
  const tube = vent.kind === 'pipe' ? vent : null
  const areaCm2 = vent.kind === 'pipe' ? (Math.PI / 4) * (vent.diameterMm / 10) ** 2 : vent.areaCm2
  const geometry = {
    count: 1,
    shape: 'round',
    areaCm2,
    radiusMm: Math.sqrt((areaCm2 * 100) / Math.PI),
    diameterMm: 0,
    outerEndMm: tube?.outerEndMm ?? 0,
    innerEndMm: tube?.innerEndMm ?? 0,
    neighboursOuterMm: 0,
    neighboursInnerMm: 0,
  } as const
  const tuningHz = vent.kind === 'plug' ? vent.tuningHz : 1
  const port = {
    geometry,
    totalAreaCm2: areaCm2,
    tuningHz,
    lengthMm: tube?.lengthMm ?? null,
    effectiveLengthMm: 0,
    highestTuningHz: 0,
  }
  return { kind: 'port', model: tube === null ? 'lumped' : 'tube', port }
}

/** The same case for our circuit; its losses stand at the box resonance, those of the case at `lossAtHz`. */
function speakerOf(given: NetlistCase): Loudspeaker {
  const completed = completeDriver(given.driver, '')
  if ('faults' in completed) throw new Error('driver')
  const portQ = given.vent?.kind === 'plug' ? given.vent.portQ : null
  const build = (shift: number) =>
    loudspeaker({
      driver: completed.driver,
      group: groupOf(given.count, given.wiring),
      netVolumeL: given.netVolumeL,
      losses: {
        leakageQ: given.leakageQ === null ? null : given.leakageQ * shift,
        absorptionQ: given.absorptionQ === null ? null : given.absorptionQ / shift,
        portQ,
        liningGain: 1,
      },
      opening: openingOf(given),
      air: AIR,
      sourceResistanceOhm: given.sourceOhm,
      solidAngle: 2 * Math.PI,
      extraMassKg: 0,
    })
  const speaker = build(build(1).boxHz / given.lossAtHz)
  // The simulator's transmission line has no wall friction.
  const { vent } = speaker.circuit
  return vent?.kind === 'tube'
    ? { ...speaker, circuit: { ...speaker.circuit, vent: { ...vent, viscosityM2PerS: 0 } } }
    : speaker
}

function savedOf({ vent }: NetlistCase): string[] {
  const always = ['i(vin)', 'v(amp)', 'i(vkept)', 'i(vcone0)']
  if (vent === null) return always
  return [...always, 'i(vvent)', ...(vent.kind === 'pipe' ? ['i(vout)'] : [])]
}

const ventAreaM2 = ({ vent }: NetlistCase): number => {
  if (vent === null) return 1
  if (vent.kind === 'pipe') return (Math.PI / 4) * (vent.diameterMm * 1e-3) ** 2
  return 1e-4 * (vent.kind === 'plug' ? vent.areaCm2 : vent.sdCm2)
}

describe('a general circuit simulator agrees from 10 Hz to 20 kHz', () => {
  it('on at least twenty cases', () => {
    expect(NETLIST_CASES.length).toBeGreaterThanOrEqual(20)
  })

  it.each(NETLIST_CASES.map((given) => [given.id, given] as const))('%s', async (_, given) => {
    const { frequencyHz, trace } = await runAc(netlistOf(given), savedOf(given), 'dec 60 10 20k')
    const ours = solveLoudspeaker(speakerOf(given), Float64Array.from(frequencyHz), 1)
    const kept = trace('i(vkept)')
    const entering = given.vent?.kind === 'pipe' ? trace('i(vvent)') : null
    const leaving = given.vent === null ? null : trace(given.vent.kind === 'pipe' ? 'i(vout)' : 'i(vvent)')
    const cone = trace('i(vcone0)')
    const current = trace('i(vin)')
    const terminal = trace('v(amp)')
    expect(frequencyHz.length).toBeGreaterThan(190)
    frequencyHz.forEach((hz, i) => {
      const w = 2 * Math.PI * hz
      // What a pipe stores on its way is heard as well: cone flow less leak less what leaves outside.
      const heard = {
        real: kept[i]!.real + (entering === null ? 0 : entering[i]!.real - leaving![i]!.real),
        img: kept[i]!.img + (entering === null ? 0 : entering[i]!.img - leaving![i]!.img),
      }
      const spl = 20 * Math.log10((RHO * w * modulus(heard)) / (2 * Math.PI * 20e-6))
      expect(Math.abs(ours.splDb[i]! - spl), `SPL at ${hz} Hz`).toBeLessThan(0.05)
      const ohm = modulus(terminal[i]!) / modulus(current[i]!)
      expect(Math.hypot(ours.channelRe[i]!, ours.channelIm[i]!) / ohm, `impedance at ${hz} Hz`).toBeCloseTo(
        1,
        2.3,
      )
      // The current of a source runs into its positive end, so the quotient is turned by half a circle.
      const phase = phaseDeg(terminal[i]!) - phaseDeg(current[i]!) + 180
      const turn = (Math.atan2(ours.channelIm[i]!, ours.channelRe[i]!) * 180) / Math.PI - phase
      expect(Math.abs(turn - 360 * Math.round(turn / 360)), `phase at ${hz} Hz`).toBeLessThan(0.3)
      const excursion = (Math.SQRT2 * 1000 * modulus(cone[i]!)) / w
      expect(ours.excursionMm[i]! / excursion, `excursion at ${hz} Hz`).toBeCloseTo(1, 2)
      if (leaving !== null) {
        const speed = (Math.SQRT2 * modulus(leaving[i]!)) / ventAreaM2(given)
        expect(Math.abs(ours.ventSpeedMPerS[i]! / speed - 1), `air speed at ${hz} Hz`).toBeLessThan(0.01)
      }
    })
  })
})
