import fc from 'fast-check'
import { evaluate } from 'mathjs'
import { describe, expect, test } from 'vitest'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { KnownOfBuild } from '../../../src/core/power/budget-input.ts'
import { powerBudget } from '../../../src/core/power/power-budget.ts'
import { PowerBudgetRequest, powerBudgetSections } from '../../../src/schema/power-budget.ts'
import { expectConforms } from '../load/conforms.ts'
import { admittedBy, notFinite } from '../load/schema-arbitrary.ts'

function outcome(request: PowerBudgetRequest, known?: KnownOfBuild) {
  const result = powerBudget(request, known)
  if (isRefusal(result)) throw new Error(result.faults.map(({ message }) => message).join(' '))
  return result
}

const smallBoard: PowerBudgetRequest = {
  amplifier: { supplyVoltageV: 5, ratedPowerW: 3, quiescentCurrentMa: 20, efficiency: 0.85 },
  loadOhm: 4,
  supply: { kind: 'computer-port', reservoirUf: 1000 },
}

/** The shelf pair of the examples: a 12 V adapter, a bridge, two drivers of 3.4 ohm in series. */
const shelfPair: PowerBudgetRequest = {
  amplifier: {
    channels: 2,
    output: 'bridge',
    supplyVoltageV: 12,
    minimumLoadOhm: 4,
    ratedPowerW: 10,
    gainDb: 26,
    inputResistanceKohm: 20,
    quiescentCurrentMa: 25,
    efficiency: 0.88,
    outputResistanceOhm: 0.3,
  },
  loadOhm: 8,
  minimumOhm: 6.8,
  supply: {
    kind: 'adapter',
    voltageV: 12,
    currentLimitA: 2,
    cable: { lengthM: 1.2, gaugeAwg: 22, contacts: 0 },
    reservoirUf: 1000,
    sharedWithSource: false,
    indicator: { colour: 'green', currentMa: 3 },
  },
  signal: {
    sourceLevelV: 0.5,
    volumeControl: { resistanceKohm: 50, taper: 'audio' },
    inputCapacitorUf: 0.47,
  },
  programme: 'music',
}

describe('what is taken when nothing is said', () => {
  test('a computer port gives the 0.5 A of USB 2.0', () => {
    expect(outcome(smallBoard).sections.supply.currentLimitA).toBe(0.5)
  })

  test('a small board has 26 dB of gain, 20 times (common practice)', () => {
    const { gain } = outcome({
      amplifier: { supplyVoltageV: 12, outputResistanceOhm: 0 },
      supply: { kind: 'adapter', voltageV: 12 },
      signal: { sourceLevelV: 0.5 },
    }).sections
    // 0.5 V times 10^(26/20) = 9.976 V.
    expect(gain?.outputV).toBeCloseTo(9.976, 3)
  })

  test('the supply lead is laid out for a loss of 5 % (common practice)', () => {
    const { supply } = outcome({
      amplifier: { channels: 2, outputResistanceOhm: 0, efficiency: 0.9, quiescentCurrentMa: 0 },
      loadOhm: 8,
      supply: { kind: 'adapter', voltageV: 12, cable: { lengthM: 2, contacts: 0 } },
    }).sections
    // Two channels of 9 W at 0.9 are 1.667 A; 0.6 V over it are 0.36 ohm; 4 m of 17.241 ohm mm2/km: 0.1916 mm2.
    expect(supply.leastAreaMm2).toBeCloseTo(0.1916, 4)
  })
})

describe('loudness', () => {
  const wanting: PowerBudgetRequest = { ...shelfPair, wants: { loudnessDb: 90 } }
  const untold = (request: PowerBudgetRequest) =>
    outcome(request).assumptions.some(({ at }) => at === '/sensitivity1WDb')

  test('is judged with the sensitivity that the request gives', () => {
    const { power, loudness } = outcome({ ...wanting, sensitivity1WDb: 85 }).sections
    // Definition of the decibel: two channels at 1 m.
    expect(loudness?.peakDb).toBeCloseTo(85 + 10 * Math.log10(2 * power.cleanPowerW), 9)
    expect(untold({ ...wanting, sensitivity1WDb: 85 })).toBe(false)
  })

  test('is said not to be judged without it, when it is wanted', () => {
    expect(outcome(wanting).sections.loudness).toBeNull()
    expect(untold(wanting)).toBe(true)
    expect(untold(shelfPair)).toBe(false)
  })

  test('a caller who knows better goes before the request', () => {
    const { power, loudness } = outcome(
      { ...wanting, sensitivity1WDb: 70 },
      { sensitivity1W1mDb: 85 },
    ).sections
    expect(loudness?.peakDb).toBeCloseTo(85 + 10 * Math.log10(2 * power.cleanPowerW), 9)
  })
})

test('without a capacitor the burst ends where the supply section says, idle current and all', () => {
  // The board idles at 200 mA, which a bass note does not double.
  const { supply, reservoir } = outcome({
    ...shelfPair,
    amplifier: { ...shelfPair.amplifier, quiescentCurrentMa: 200 },
  }).sections
  expect(reservoir?.lowestBurstWithoutV).toBeCloseTo(supply.boardVoltageAtPeakV ?? 0, 6)
})

describe('a 5 V board on a computer port', () => {
  const { sections, findings, assumptions } = outcome(smallBoard)

  test('ends near 3 W a channel and its claim of 3 W is a figure at 10 % (common practice)', () => {
    expect(sections.power.cleanPowerW).toBeGreaterThan(2.4)
    expect(sections.power.cleanPowerW).toBeLessThan(3.125)
    expect(sections.power.powerAt10PercentW).toBeGreaterThan(3)
    expect(sections.power.claimedPossible).toBe(true)
  })

  test('draws far less with music than its power suggests: about 0.2 A at full volume (common practice)', () => {
    expect(sections.supply.eighthPowerA).toBeGreaterThan(0.15)
    expect(sections.supply.eighthPowerA).toBeLessThan(0.25)
    expect(sections.supply.programmeA).toBeLessThan(sections.supply.sineA / 5)
  })

  test('its 1000 uF are about a hundred times over the attach limit', () => {
    expect(sections.reservoir?.timesOverAttachLimit).toBeGreaterThan(95)
    expect(findings).toContainEqual(
      expect.objectContaining({ code: 'reservoir-over-attach-limit', severity: 'warning' }),
    )
  })

  test('4.7 ohm in series do not mend that, 51 ohm do', () => {
    const limited = (inrushLimiterOhm: number) =>
      outcome({ ...smallBoard, supply: { ...smallBoard.supply, inrushLimiterOhm } }).findings.map(
        ({ code }) => code,
      )
    expect(limited(4.7)).toContain('reservoir-over-attach-limit')
    expect(limited(51)).not.toContain('reservoir-over-attach-limit')
  })

  test('says what it filled in: port current, lead, output resistance, programme', () => {
    expect(assumptions.map(({ at }) => at)).toEqual(
      expect.arrayContaining([
        '/supply/currentLimitA',
        '/supply/cable',
        '/amplifier/outputResistanceOhm',
        '/programme',
      ]),
    )
  })
})

describe('the shelf pair', () => {
  const { sections } = outcome(shelfPair)

  // Rows bridge-12-8-0.3, cable-drop-22, indicator-12-2.2-3, gain-0.5-26, coupling-0.47-20, capacitor-rating-12 of
  // tests/outside/electrical-checks.json, here through the whole calculation.
  test('comes to the figures of the check rows', () => {
    expect(sections.power.cleanPowerW).toBeCloseTo(8.3612, 3)
    expect(sections.supply.cableOhm).toBeCloseTo(0.12711, 4)
    expect(sections.indicator?.resistorOhm).toBe(3300)
    expect(sections.indicator?.currentMa).toBeCloseTo(2.9697, 3)
    expect(sections.gain?.overdriveDb).toBeCloseTo(1.4061, 3)
    expect(sections.gain?.clipAtSourceV).toBeCloseTo(0.42527, 4)
    expect(sections.gain?.couplingCornerHz).toBeCloseTo(16.931, 2)
    expect(sections.reservoir?.leastRatingV).toBe(16)
  })

  test('draws 0.151 A on music as row programme-12v has it, the indicator on top', () => {
    expect(sections.supply.programmeA).toBeCloseTo(0.15109 + 0.003, 4)
  })

  test('leaves nothing to stop it', () => {
    expect(outcome(shelfPair).findings.filter(({ severity }) => severity === 'blocker')).toEqual([])
  })
})

test('a bank of 10 Ah runs a board of 0.25 A on 5 V for a day (row run-time-10000)', () => {
  const request: PowerBudgetRequest = {
    amplifier: { supplyVoltageV: 5, quiescentCurrentMa: 20 },
    loadOhm: 4,
    supply: { kind: 'power-bank', capacityMah: 10_000 },
  }
  const { supply } = outcome(request).sections
  expect((supply.runningTimeH ?? 0) * supply.eighthPowerA).toBeCloseTo(25.16 * 0.25, 2)
})

test('a pack of three cells of 2600 mAh holds 25.3 Wh to use (row pack-runtime-3s)', () => {
  const request: PowerBudgetRequest = {
    amplifier: { supplyVoltageV: 12 },
    loadOhm: 8,
    supply: { kind: 'cells', cellsInSeries: 3, capacityMah: 2600 },
  }
  const { supply } = outcome(request).sections
  // 11.487 h at 2.2 W.
  expect((supply.runningTimeH ?? 0) * supply.eighthPowerA * supply.voltageV).toBeCloseTo(11.487 * 2.2, 1)
})

test('the reservoir of the shelf pair, by hand', () => {
  const { reservoir, supply } = outcome(shelfPair).sections
  // 1000 uF: 1 mV a microsecond and ampere; a quarter of a 50 Hz cycle is 5 ms.
  expect(reservoir?.droopV).toBeCloseTo(5 * supply.sineA, 9)
  // Half of C (12² − 10.8²) over the power of the sine: 13.68 mJ.
  expect((reservoir?.holdUpMs ?? 0) * supply.sineA * 12).toBeCloseTo(13.68, 6)
  // 12 V through the lead of 0.12711 ohm (row cable-drop-22) and 0.03 ohm of the capacitor.
  expect(reservoir?.attachPeakA).toBeCloseTo(12 / 0.15711, 1)
})

test('a source of unknown voltage is refused with the place to give it', () => {
  const result = powerBudget({ amplifier: {}, supply: { kind: 'adapter' } })
  expect(isRefusal(result) && result.faults.map(({ at }) => at)).toEqual(['/supply/voltageV'])
})

test('a negotiating board gets the highest level that it stands: 9 V below 12.6 V (row pd-level-for-12.6)', () => {
  const request: PowerBudgetRequest = {
    amplifier: { asksForPower: true, maximumSupplyV: 12.6 },
    loadOhm: 8,
    supply: { kind: 'charger', port: 'power-delivery' },
  }
  expect(outcome(request).sections.supply.voltageV).toBe(9)
})

test('half of a source is lost when its resistance equals that of the input: 6.02 dB', () => {
  const chain = (sourceResistanceOhm: number) =>
    outcome({ ...shelfPair, signal: { sourceLevelV: 0.5, sourceResistanceOhm } }).sections.gain
  expect((chain(0)?.overdriveDb ?? 0) - (chain(20_000)?.overdriveDb ?? 0)).toBeCloseTo(6.0206, 3)
  expect((chain(20_000)?.clipAtSourceV ?? 0) / (chain(0)?.clipAtSourceV ?? 1)).toBeCloseTo(2, 9)
})

test('loudness: 84 dB for 1 W and two boxes of 8 W at 1.5 m reach 92.5 dB', () => {
  const { loudness, power } = outcome(shelfPair, { sensitivity1W1mDb: 84 }).sections
  expect(power.cleanPowerW).toBeCloseTo(8.3612, 3)
  // 84 + 10 log(8.3612) + 3.01 at 1 m; the programme lies 14 − 3.01 dB below.
  expect(loudness?.peakDb).toBeCloseTo(84 + 9.2227 + 3.0103, 2)
  expect((loudness?.peakDb ?? 0) - (loudness?.programmeDb ?? 0)).toBeCloseTo(10.99, 2)
})

test('the printed working comes to the same figures as the plain code', () => {
  const { sections, working } = outcome(shelfPair)
  const results = new Map(working.map((row) => [row.quantity, evaluate(row.formula, { ...row.with })]))
  expect(results.get('clean power a channel')).toBeCloseTo(sections.power.cleanPowerW, 9)
  expect(results.get('average supply current on the programme')).toBeCloseTo(sections.supply.programmeA, 9)
  expect(results.get('supply lead, out and back')).toBeCloseTo(sections.supply.cableOhm, 9)
  expect(results.get('voltage left at the board on the programme')).toBeCloseTo(
    sections.supply.boardVoltageV ?? 0,
    9,
  )
  expect(results.get('exact resistor of the indicator')).toBeCloseTo(9.8 / 0.003, 6)
  expect(results.get('level of the source over the clip point, knob open')).toBeCloseTo(
    sections.gain?.overdriveDb ?? 0,
    9,
  )
  expect(results.get('corner of the coupling capacitor, knob open')).toBeCloseTo(
    sections.gain?.couplingCornerHz ?? 0,
    9,
  )
  expect(results.size).toBe(working.length)
  expect(results.size).toBe(7)
})

test('the sections are what the contract says of them', () => {
  expectConforms(outcome(shelfPair, { sensitivity1W1mDb: 84 }).sections, powerBudgetSections)
  expectConforms(outcome({ ...smallBoard, supply: { kind: 'computer-port' } }).sections, powerBudgetSections)
})

describe('a single-ended output on one supply', () => {
  const request = (wants: PowerBudgetRequest['wants']): PowerBudgetRequest => ({
    amplifier: { output: 'single-ended', supplyVoltageV: 12 },
    loadOhm: 4,
    supply: { kind: 'adapter', voltageV: 12 },
    ...(wants && { wants }),
  })

  // Row coupling-output-capacitor of tests/outside/electrical-checks.json.
  test('rests at half the supply and needs 995 uF into 4 ohm for 40 Hz, the note taken when none is wanted', () => {
    const { sections, assumptions, working } = outcome(request(undefined))
    expect(sections.power.outputDcV).toBe(6)
    expect(sections.power.outputCapacitorUf).toBeCloseTo(994.72, 1)
    expect(assumptions).toContainEqual(expect.objectContaining({ at: '/wants/lowestHz', value: 40 }))
    const [printed] = working.filter(({ quantity }) => quantity === 'capacitor at a single-ended output')
    expect(evaluate(printed?.formula ?? '', { ...printed?.with })).toBeCloseTo(
      sections.power.outputCapacitorUf ?? 0,
      9,
    )
  })

  test('needs half of it for a lowest note an octave up', () => {
    const { sections, assumptions } = outcome(request({ lowestHz: 80 }))
    expect(sections.power.outputCapacitorUf).toBeCloseTo(994.72 / 2, 1)
    expect(assumptions.map(({ at }) => at)).not.toContain('/wants/lowestHz')
    expectConforms(sections, powerBudgetSections)
  })

  test('a bridge has neither', () => {
    const { sections, assumptions } = outcome(shelfPair)
    expect(sections.power).toMatchObject({ outputDcV: null, outputCapacitorUf: null })
    expect(assumptions.map(({ at }) => at)).not.toContain('/wants/lowestHz')
  })
})

describe('the resistance of the reservoir itself', () => {
  const esr = '/supply/reservoirEsrOhm'

  test('is assumed at its own place when it was not given', () => {
    const places = outcome(shelfPair).assumptions.map(({ at }) => at)
    expect(places).toContain(esr)
    expect(places).not.toContain('/supply/reservoirUf')
  })

  test('is used when given: 12 V through 0.12711 ohm of lead (row cable-drop-22) and 0.2 ohm', () => {
    const { sections, assumptions } = outcome({
      ...shelfPair,
      supply: { ...shelfPair.supply, reservoirEsrOhm: 0.2 },
    })
    expect(sections.reservoir?.attachPeakA).toBeCloseTo(12 / 0.32711, 2)
    expect(assumptions.map(({ at }) => at)).not.toContain(esr)
  })
})

test('a lead of unknown wire is taken as 24 AWG, and it is said', () => {
  const { assumptions } = outcome({ ...shelfPair, supply: { ...shelfPair.supply, cable: { lengthM: 1 } } })
  expect(assumptions).toContainEqual(expect.objectContaining({ at: '/supply/cable/gaugeAwg', value: 24 }))
})

/** The same request with one of every two values that contradict each other taken out. */
function reconciled({ amplifier, supply, ...rest }: PowerBudgetRequest): PowerBudgetRequest {
  const { minimumSupplyV: _, ...board } = amplifier
  const { port, voltageV, cable, ...source } = supply
  const { areaMm2: __, ...lead } = cable ?? { lengthM: 1 }
  const hasSocket = supply.kind !== 'adapter' && supply.kind !== 'cells'
  return {
    ...rest,
    amplifier: { supplyVoltageV: 12, ...board },
    supply: {
      ...source,
      ...(cable && { cable: lead }),
      ...(port !== undefined && hasSocket && { port }),
      ...(voltageV !== undefined && supply.kind === 'adapter' && { voltageV }),
    },
  }
}

test('no request that the schema admits gets a number that is none, or a throw', () => {
  let answered = 0
  const sensitivity = fc.option(fc.double({ min: 40, max: 130, noNaN: true }), { nil: undefined })
  fc.assert(
    fc.property(admittedBy(PowerBudgetRequest), sensitivity, (request, sensitivity1W1mDb) => {
      const known = sensitivity1W1mDb === undefined ? {} : { sensitivity1W1mDb }
      const given = request as PowerBudgetRequest
      expect(notFinite(powerBudget(given, known))).toEqual([])
      const result = powerBudget(reconciled(given), known)
      if (!isRefusal(result)) answered++
      expect(notFinite(result)).toEqual([])
    }),
    { seed: 20_260_106, numRuns: 3000 },
  )
  expect(answered).toBeGreaterThan(1500)
})

describe('full volume', () => {
  const ideal: PowerBudgetRequest = {
    amplifier: {
      channels: 2,
      supplyVoltageV: 12,
      outputResistanceOhm: 0,
      efficiency: 0.9,
      quiescentCurrentMa: 0,
      gainDb: 20,
      inputResistanceKohm: 20,
    },
    loadOhm: 8,
    supply: { kind: 'adapter', voltageV: 12 },
    sensitivity1WDb: 85,
    programme: 'sine',
  }
  // 12 V into 8 ohm: 9 W clean; the clip point is 8.485 V, so 0.8485 V of the source at 20 dB.
  test('is the clip point of an amplifier that the source can clip', () => {
    const { power, loudness } = outcome({ ...ideal, signal: { sourceLevelV: 1 } }).sections
    expect(power).toMatchObject({ limitedBy: 'clipping' })
    expect(power.reachedPowerW).toBeCloseTo(9, 9)
    expect(loudness?.peakDb).toBeCloseTo(85 + 10 * Math.log10(18), 9)
  })
  test('ends where the source ends: half its voltage is a quarter of the power, and of the current', () => {
    const sourceLevelV = Math.SQRT1_2 * 0.6
    const { power, supply, loudness } = outcome({ ...ideal, signal: { sourceLevelV } }).sections
    expect(power).toMatchObject({ limitedBy: 'source-level' })
    expect(power.reachedPowerW).toBeCloseTo(9 / 4, 9)
    expect(supply.programmeA).toBeCloseTo(20 / 12 / 4, 9)
    expect(supply.sineA).toBeCloseTo(20 / 12, 9)
    expect(loudness?.programmeDb).toBeCloseTo(85 + 10 * Math.log10(4.5), 9)
  })
  test('ends where the supply ends: 0.6 A of 12 V at 0.9 are 3.24 W a channel', () => {
    const supply = { ...ideal.supply, currentLimitA: 0.6 }
    const { power, loudness } = outcome({ ...ideal, supply }).sections
    expect(power).toMatchObject({ limitedBy: 'supply-current' })
    expect(power.programmePowerW).toBeCloseTo(3.24, 9)
    expect(loudness?.programmeDb).toBeCloseTo(85 + 10 * Math.log10(6.48), 9)
  })
  test('is silence when the supply does not carry the idle board', () => {
    const request = {
      ...ideal,
      amplifier: { ...ideal.amplifier, quiescentCurrentMa: 100 },
      supply: { ...ideal.supply, currentLimitA: 0.05 },
    }
    expect(outcome(request).sections.loudness?.programmeDb).toBeNull()
  })
})

describe('a pack', () => {
  const pack: PowerBudgetRequest = {
    amplifier: { supplyVoltageV: 12, outputResistanceOhm: 0.3, efficiency: 0.9, quiescentCurrentMa: 0 },
    loadOhm: 8,
    supply: { kind: 'cells', cellsInSeries: 3 },
  }
  test('drives fuse and lead hardest when full: 12.6 V through 8 and 0.3 ohm', () => {
    const { supply } = outcome(pack).sections
    const fullW = ((12.6 * 8) / 8.3) ** 2 / 16
    expect(supply.worstA).toBeCloseTo((2 * fullW) / (0.9 * 12.6), 9)
    // Check row pack-3s-power-span: 9.2182 W full and 4.7031 W empty.
    expect(supply.levelSpanDb).toBeCloseTo(10 * Math.log10(9.2182 / 4.7031), 3)
  })
})

describe('a USB socket', () => {
  const on = (port: 'type-c-3a' | 'usb2' | 'usb3-unconfigured', cable?: { lengthM: number }) =>
    outcome({
      amplifier: { supplyVoltageV: 5, asksForPower: true },
      supply: { kind: 'charger', port, ...(cable && { cable: { ...cable, contacts: 0 } }) },
    }).sections.supply
  test('of 3 A may lawfully leave 4.0 V at the board (check row type-c-sink-lowest)', () => {
    expect(on('type-c-3a')).toMatchObject({ lowestSocketV: 4.75, lowestLawfulBoardV: 4 })
  })
  test('of USB 2.0 leaves 4.40 V, of USB 3 4.0 V (seen in summaries of the standards)', () => {
    expect(on('usb2')).toMatchObject({ lowestSocketV: 4.75, lowestLawfulBoardV: 4.4 })
    expect(on('usb3-unconfigured')).toMatchObject({ lowestSocketV: 4.45, lowestLawfulBoardV: 4 })
  })
  test('with a lead described leaves what that lead leaves', () => {
    expect(on('usb2', { lengthM: 0 }).lowestLawfulBoardV).toBeCloseTo(4.75, 9)
  })
  test('is no matter of an adapter', () => {
    expect(outcome(shelfPair).sections.supply).toMatchObject({
      lowestSocketV: null,
      lowestLawfulBoardV: null,
    })
  })
  test('a 5 V board claimed at 3 W a channel draws about 0.2 A with music at full volume (common practice)', () => {
    const ideal = { ...smallBoard, amplifier: { ...smallBoard.amplifier, outputResistanceOhm: 0 } }
    expect(outcome(ideal).sections.supply.eighthPowerA).toBeCloseTo(0.2038, 4)
  })
})

describe('what was filled in', () => {
  const rows = (request: PowerBudgetRequest) => outcome(request).assumptions
  test('of the least voltage of the board', () => {
    expect(rows(smallBoard)).toContainEqual(
      expect.objectContaining({ at: '/amplifier/minimumSupplyV', value: 4, unit: 'V' }),
    )
  })
  test('of the audio shield and the level of the source, when hum is reckoned', () => {
    const shared = { ...smallBoard, supply: { ...smallBoard.supply, sharedWithSource: true } }
    const at = rows(shared).map((row) => row.at)
    expect(at).toEqual(expect.arrayContaining(['/signal/shieldResistanceOhm', '/signal/sourceLevelV']))
    expect(rows(smallBoard).map((row) => row.at)).not.toContain('/signal/shieldResistanceOhm')
  })
})

test('a single-ended board that carries its capacitor needs no other', () => {
  const single = { ...smallBoard.amplifier, output: 'single-ended' as const }
  const codes = (fitted: boolean) =>
    outcome({ ...smallBoard, amplifier: { ...single, outputCapacitorFitted: fitted } }).findings.map(
      ({ code }) => code,
    )
  expect(codes(false)).toContain('output-capacitor-needed')
  expect(codes(true)).not.toContain('output-capacitor-needed')
})

describe('what to buy', () => {
  const laidOut = (supply: Partial<PowerBudgetRequest['supply']>) =>
    outcome({
      amplifier: { channels: 2, outputResistanceOhm: 0, efficiency: 0.9, quiescentCurrentMa: 0 },
      loadOhm: 8,
      supply: { kind: 'adapter', voltageV: 12, cable: { lengthM: 2, contacts: 0 }, ...supply },
    }).sections
  test('0.19 mm2 are a lead of 24 AWG: 0.205 mm2, where 26 AWG has 0.129 (ASTM B258)', () => {
    expect(laidOut({}).supply.leadGaugeAwg).toBe(24)
  })
  test('1.67 A want a switch of 2 A (usual ratings, common practice)', () => {
    expect(laidOut({}).supply.switchA).toBe(2)
  })
  test('a reservoir marked 16 V keeps 3.4 V over a full pack of 12.6 V', () => {
    const pack = { kind: 'cells', voltageV: 11.1, cellsInSeries: 3, reservoirUf: 100 } as const
    expect(laidOut({ ...pack, reservoirRatingV: 16 }).reservoir?.ratingMarginV).toBeCloseTo(3.4, 9)
    expect(laidOut(pack).reservoir?.ratingMarginV).toBeNull()
  })
  test('a claim of 3 W at 10 % distortion is 2.4 W clean (check row thd-10-3.0)', () => {
    expect(outcome(smallBoard).sections.power.claimedCleanPowerW).toBeCloseTo(2.4, 9)
  })
})

test('the clip margin is what the source lacks to the clip point', () => {
  // 0.5 V at 20 dB are 5 V; 12 V clip at 12/sqrt(2).
  const { power } = outcome({
    amplifier: { supplyVoltageV: 12, gainDb: 20, outputResistanceOhm: 0 },
    supply: { kind: 'adapter', voltageV: 12 },
    signal: { sourceLevelV: 0.5 },
  }).sections
  expect(power.clipMarginDb).toBeCloseTo(20 * Math.log10(12 / Math.SQRT2 / 5), 9)
  expect(outcome(smallBoard).sections.power.clipMarginDb).toBeNull()
})

test('a supply ground without resistance is replaced by a usual one, and that is said', () => {
  const cable = { lengthM: 0, contacts: 0 }
  const { assumptions } = outcome({
    ...smallBoard,
    supply: { ...smallBoard.supply, cable, sharedWithSource: true },
  })
  expect(assumptions).toContainEqual(
    expect.objectContaining({ at: '/supply/cable', value: 0.1, unit: 'ohm' }),
  )
})

test('the source keeps nearly all ripple of a bass note: 1000 uF behind 0.35 ohm (row sharing-0.35-1000)', () => {
  const cable = { lengthM: 0, contacts: 1, contactResistanceOhm: 0.35 }
  const { reservoir } = outcome({ ...smallBoard, supply: { ...smallBoard.supply, cable } }).sections
  // First-order filter at 100 Hz, corner 455 Hz (reference, section 8).
  expect(reservoir?.sourceShareOfRipple).toBeCloseTo(1 / Math.hypot(1, 100 / 454.73), 4)
})
