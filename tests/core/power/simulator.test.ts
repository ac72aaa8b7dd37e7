import { describe, expect, it, test } from 'vitest'
import { lowestBurstVoltageV } from '../../../src/core/power/bass-burst.ts'
import { boardVoltageV, largestDeliverableW, loopResistanceOhm } from '../../../src/core/power/cable.ts'
import { capacitorForCornerUf, cornerHz, couplingResistanceOhm } from '../../../src/core/power/coupling.ts'
import { droopV, holdUpMs, inrush, portDipV, rippleSharing } from '../../../src/core/power/reservoir.ts'
import { attenuationDb } from '../../../src/core/power/volume.ts'
import {
  areaUnder,
  fallsThrough,
  lowerCornerHz,
  modulus,
  runAc,
  runOperatingPoint,
  runTransient,
} from '../../outside/simulator.ts'

/*
 * What the core has in closed form or in its own time steps, against ngspice on the circuit drawn from the same plain
 * numbers. Every expected value of this file comes out of the simulator.
 */

function expectWithin(ours: number | null, theirs: number, share: number, figure: string): void {
  const what = `${figure}: ${ours}, simulator ${theirs}`
  expect(Math.abs((ours ?? Number.NaN) - theirs), what).toBeLessThanOrEqual(share * theirs)
}

describe('a reservoir with the source away', () => {
  it.each([
    { uf: 1000, fromV: 5, currentA: 0.5, timeMs: 5 },
    { uf: 470, fromV: 12, currentA: 1.5, timeMs: 2 },
  ])('$uf uF falls at $currentA A for $timeMs ms', async ({ uf, fromV, currentA, timeMs }) => {
    const lines = [`C1 board 0 ${uf}u ic=${fromV}`, `I1 board 0 pwl(0 0 1n ${currentA})`]
    const { trace } = await runTransient(lines, ['v(board)'], timeMs * 5e-6, timeMs * 1e-3)
    expectWithin(droopV(uf, currentA, timeMs), fromV - trace('v(board)').at(-1)!, 0.001, 'droop')
  })

  it.each([
    { uf: 1000, fromV: 5, toV: 4.5, powerW: 3 },
    { uf: 4700, fromV: 12, toV: 9, powerW: 20 },
  ])('$uf uF carries $powerW W from $fromV V to $toV V', async ({ uf, fromV, toV, powerW }) => {
    const lines = [`C1 board 0 ${uf}u ic=${fromV}`, `B1 board 0 i=${powerW}/max(v(board),1)`]
    const farMs = (2e-3 * uf * (fromV - toV) * fromV) / powerW
    const { timeS, trace } = await runTransient(lines, ['v(board)'], farMs * 1e-6, farMs * 1e-3)
    const simulatedMs = 1e3 * fallsThrough(timeS, trace('v(board)'), toV)
    expectWithin(holdUpMs(uf, fromV, toV, powerW), simulatedMs, 0.002, 'hold-up')
  })
})

describe('a capacitor at the moment it is plugged in', () => {
  it.each([
    { voltageV: 5, ohm: 0.25, uf: 10 },
    { voltageV: 5, ohm: 0.25, uf: 470 },
    { voltageV: 5, ohm: 4.7, uf: 1000 },
    { voltageV: 5, ohm: 51, uf: 470 },
    { voltageV: 12, ohm: 0.25, uf: 1000 },
    { voltageV: 12, ohm: 4.7, uf: 10 },
    { voltageV: 12, ohm: 51, uf: 1000 },
  ])('$uf uF through $ohm ohm at $voltageV V', async ({ voltageV, ohm, uf }) => {
    const tauS = ohm * uf * 1e-6
    const lines = [`V1 source 0 pwl(0 0 1n ${voltageV})`, `R1 source board ${ohm}`, `C1 board 0 ${uf}u ic=0`]
    const { timeS, trace } = await runTransient(lines, ['i(v1)'], tauS / 200, 12 * tauS)
    // The current of a source runs into its positive end.
    const currentA = trace('i(v1)').map((value) => -value)
    const peakA = Math.max(...currentA)
    const endS = peakA > 0.1 ? fallsThrough(timeS, currentA, 0.1) : 0
    const early = timeS.filter((time) => time <= endS).length
    const ours = inrush(uf, ohm, voltageV)
    expectWithin(ours.peakCurrentA, peakA, 0.02, 'peak current')
    expectWithin(ours.chargeMc, 1e3 * areaUnder(timeS, currentA), 0.02, 'charge')
    expectWithin(ours.timeAbove100mAMs, 1e3 * endS, 0.02, 'time above 100 mA')
    const above = areaUnder(timeS.slice(0, early), currentA.slice(0, early))
    expectWithin(ours.chargeAbove100mAMc, 1e3 * above, 0.02, 'charge above 100 mA')
    expect(ours.withinAttachLimit).toBe(above <= 50e-6)
  })

  it.each([
    { portUf: 120, uf: 10, fullV: 5 },
    { portUf: 120, uf: 1000, fullV: 5 },
  ])('$uf uF shares the charge of a port with $portUf uF', async ({ portUf, uf, fullV }) => {
    const lines = [`C1 port 0 ${portUf}u ic=${fullV}`, 'R1 port board 0.01', `C2 board 0 ${uf}u ic=0`]
    const { trace } = await runTransient(lines, ['v(port)'], 2e-8, 2e-5)
    expectWithin(portDipV(uf, fullV, portUf), fullV - trace('v(port)').at(-1)!, 0.002, 'dip')
  })
})

test.each([
  { ohm: 0.25, uf: 1000, toneHz: 50 },
  { ohm: 0.5, uf: 4700, toneHz: 80 },
])('$uf uF behind $ohm ohm keeps the ripple of $toneHz Hz from the source', async ({ ohm, uf, toneHz }) => {
  const lines = ['V1 source 0 5', `R1 source board ${ohm}`, `C1 board 0 ${uf}u`, 'I1 board 0 dc 0 ac 1']
  const { trace } = await runAc(lines, ['i(v1)'], `lin 1 ${2 * toneHz} ${2 * toneHz}`)
  const { sourceShareOfRipple } = rippleSharing(ohm, uf, toneHz)
  expectWithin(sourceShareOfRipple, modulus(trace('i(v1)')[0]!), 0.001, 'share of the source')
})

describe('a bass burst of constant power', () => {
  interface Case {
    supplyV: number
    ohm: number
    uf: number
    esrOhm: number
    steadyW: number
    averageW: number
    toneHz: number
  }

  const ourLowestV = ({ supplyV, ohm, uf, esrOhm, steadyW, averageW, toneHz }: Case): number | null =>
    lowestBurstVoltageV({
      supplyVoltageV: supplyV,
      sourceResistanceOhm: ohm,
      reservoirUf: uf,
      capacitorEsrOhm: esrOhm,
      steadyPowerW: steadyW,
      averagePowerDrawnW: averageW,
      toneHz,
    })

  /** Lowest voltage between two moments in cycles; below a quarter of the supply the load is a current. */
  async function simulatedLowestV(given: Case, fromCycle: number, toCycle: number): Promise<number> {
    const { supplyV, ohm, uf, esrOhm, steadyW, averageW, toneHz } = given
    const lines = [
      `V1 source 0 ${supplyV}`,
      `R1 source board ${ohm}`,
      ...(uf > 0 ? [`R2 board plate ${esrOhm}`, `C1 plate 0 ${uf}u ic=${supplyV}`] : []),
      `B1 board 0 i=(${steadyW}+${2 * averageW}*sin(${2 * Math.PI * toneHz}*time)^2)/max(v(board),${supplyV / 4})`,
    ]
    const { timeS, trace } = await runTransient(lines, ['v(board)'], 1 / (toneHz * 500), toCycle / toneHz)
    return Math.min(...trace('v(board)').filter((_, i) => timeS[i]! > fromCycle / toneHz))
  }

  it.each([
    { supplyV: 5, ohm: 0.25, uf: 470, esrOhm: 0.03, steadyW: 0.2, averageW: 4, toneHz: 50 },
    { supplyV: 5, ohm: 0.4, uf: 1000, esrOhm: 0.03, steadyW: 0.2, averageW: 5, toneHz: 50 },
    { supplyV: 5, ohm: 0.25, uf: 4700, esrOhm: 0.05, steadyW: 0, averageW: 6, toneHz: 80 },
    { supplyV: 12, ohm: 0.5, uf: 2200, esrOhm: 0.1, steadyW: 1, averageW: 20, toneHz: 40 },
    { supplyV: 12, ohm: 0.5, uf: 10000, esrOhm: 0.02, steadyW: 1, averageW: 25, toneHz: 50 },
    { supplyV: 5, ohm: 0.25, uf: 0, esrOhm: 0, steadyW: 0.2, averageW: 4, toneHz: 50 },
  ])('settles: $averageW W at $supplyV V behind $ohm ohm with $uf uF', async (given) => {
    expectWithin(ourLowestV(given), await simulatedLowestV(given, 10, 15), 0.005, 'lowest voltage')
  })

  it('has not settled in its six cycles behind a reservoir of 0.1 F', async () => {
    const given = { supplyV: 12, ohm: 0.5, uf: 1e5, esrOhm: 0.01, steadyW: 1, averageW: 25, toneHz: 50 }
    // The first moment of a run from initial conditions holds zeros.
    expectWithin(ourLowestV(given), await simulatedLowestV(given, 0.01, 6), 0.005, 'lowest voltage')
  })

  it.each([
    { supplyV: 5, ohm: 0.5, uf: 10, esrOhm: 0.03, steadyW: 0.2, averageW: 8, toneHz: 50 },
    { supplyV: 5, ohm: 0.5, uf: 470, esrOhm: 0.03, steadyW: 0.2, averageW: 12, toneHz: 50 },
  ])('collapses: $averageW W at $supplyV V behind $ohm ohm with $uf uF', async (given) => {
    expect(ourLowestV(given)).toBeNull()
    // Constant power has no rest below half the supply.
    expect(await simulatedLowestV(given, 0.01, 6)).toBeLessThan(given.supplyV / 3)
  })
})

describe('the volume control and its coupling capacitor', () => {
  // The two parts of the track in ohm: 15 % below the wiper of an audio track at half turn, straight on to the ends.
  it.each([
    { taper: 'linear', turn: 0.5, upperOhm: 5e3, lowerOhm: 5e3, sourceOhm: 100, inputOhm: 20e3, uf: 1 },
    { taper: 'linear', turn: 0.2, upperOhm: 40e3, lowerOhm: 10e3, sourceOhm: 1000, inputOhm: 10e3, uf: 0.47 },
    { taper: 'audio', turn: 0.5, upperOhm: 8.5e3, lowerOhm: 1.5e3, sourceOhm: 600, inputOhm: 30e3, uf: 1 },
    { taper: 'audio', turn: 0.75, upperOhm: 4250, lowerOhm: 5750, sourceOhm: 50, inputOhm: 15e3, uf: 0.22 },
    { taper: 'audio', turn: 0.1, upperOhm: 97e3, lowerOhm: 3e3, sourceOhm: 2200, inputOhm: 47e3, uf: 0.1 },
    { taper: 'audio', turn: 1, upperOhm: 1e-6, lowerOhm: 10e3, sourceOhm: 100, inputOhm: 20e3, uf: 2.2 },
  ] as const)('$taper at $turn turn into $inputOhm ohm with $uf uF', async (given) => {
    const { taper, turn, upperOhm, lowerOhm, sourceOhm, inputOhm, uf } = given
    const control = {
      taper,
      resistanceOhm: Math.round(upperOhm + lowerOhm),
      inputResistanceOhm: inputOhm,
      sourceResistanceOhm: sourceOhm,
    }
    const circuits = {
      'before-control': ['R1 source out', `C1 out top ${uf}u`, 'R2 top wiper', 'R3 wiper 0', 'R4 wiper 0'],
      'after-wiper': ['R1 source top', 'R2 top wiper', 'R3 wiper 0', `C1 wiper input ${uf}u`, 'R4 input 0'],
    } as const
    const ohms: Record<string, number> = { R1: sourceOhm, R2: upperOhm, R3: lowerOhm, R4: inputOhm }
    for (const placement of ['before-control', 'after-wiper'] as const) {
      const parts = circuits[placement].map((part) => `${part} ${ohms[part.slice(0, 2)] ?? ''}`)
      const node = placement === 'before-control' ? 'v(wiper)' : 'v(input)'
      const swept = await runAc(['V1 source 0 dc 0 ac 1', ...parts], [node], 'dec 50 0.01 1meg')
      const ours = cornerHz(uf, couplingResistanceOhm(control, turn, placement))
      expectWithin(ours, lowerCornerHz(swept, node), 0.01, placement)
      const simulatedDb = 20 * Math.log10(modulus(swept.trace(node).at(-1)!))
      expect(Math.abs(attenuationDb(control, turn) - simulatedDb), placement).toBeLessThan(0.02)
    }
  })

  it.each([
    { wantedHz: 40, loadOhm: 4 },
    { wantedHz: 80, loadOhm: 8 },
  ])('the output capacitor for $loadOhm ohm is 3 dB down at $wantedHz Hz', async ({ wantedHz, loadOhm }) => {
    const uf = capacitorForCornerUf(wantedHz, loadOhm)
    const lines = ['V1 amp 0 dc 0 ac 1', `C1 amp out ${uf}u`, `R1 out 0 ${loadOhm}`]
    const swept = await runAc(lines, ['v(out)'], 'dec 50 1 1meg')
    expectWithin(wantedHz, lowerCornerHz(swept, 'v(out)'), 0.01, 'corner')
  })
})

describe('a board of constant power at the end of a lead', () => {
  // One conductor in ohm a metre: 39 and 19.5 ohm/km are IEC 60228 class 5; 84.2 ohm/km is the printed table of 24 AWG.
  it.each([
    { supplyV: 5, lengthM: 1, cable: { areaMm2: 0.5 }, ohmPerM: 0.039, contactOhm: 0.03, powerW: 5 },
    { supplyV: 5, lengthM: 2, cable: { gaugeAwg: 24 }, ohmPerM: 0.0842, contactOhm: 0.03, powerW: 4 },
    { supplyV: 12, lengthM: 5, cable: { areaMm2: 1 }, ohmPerM: 0.0195, contactOhm: 0.01, powerW: 40 },
    { supplyV: 5, lengthM: 2, cable: { areaMm2: 0.5 }, ohmPerM: 0.039, contactOhm: 0.1, powerW: 10 },
  ])('$powerW W from $supplyV V over $lengthM m', async (given) => {
    const { supplyV, lengthM, cable, ohmPerM, contactOhm, powerW } = given
    const lines = [
      `V1 source 0 ${supplyV}`,
      `R1 source a ${contactOhm}`,
      `R2 a b ${ohmPerM * lengthM}`,
      `R3 b plus ${contactOhm}`,
      `R4 minus c ${contactOhm}`,
      `R5 c d ${ohmPerM * lengthM}`,
      `R6 d 0 ${contactOhm}`,
      `B1 plus minus i=${powerW}/max(v(plus,minus),${supplyV / 4})`,
      `.nodeset v(plus)=${supplyV} v(minus)=0`,
    ]
    const at = await runOperatingPoint(lines, ['v(plus)', 'v(minus)'])
    const loopOhm = loopResistanceOhm({ lengthM, ...cable, contacts: 4, contactResistanceOhm: contactOhm })
    expectWithin(
      boardVoltageV(supplyV, loopOhm, powerW),
      at('v(plus)') - at('v(minus)'),
      0.001,
      'board voltage',
    )
  })

  it('no load takes more than the largest deliverable power', async () => {
    const takenW: number[] = []
    for (const loadOhm of [0.2, 0.3, 0.4, 0.5, 0.8]) {
      const at = await runOperatingPoint(
        ['V1 s 0 5', 'R1 s board 0.4', `R2 board 0 ${loadOhm}`],
        ['v(board)'],
      )
      takenW.push(at('v(board)') ** 2 / loadOhm)
    }
    expectWithin(largestDeliverableW(5, 0.4), Math.max(...takenW), 0.001, 'power')
  })
})
