import { expect, it } from 'vitest'
import { classicVented } from '../../../src/core/box/alignment.ts'
import { groupOf, loudspeaker } from '../../../src/core/box/loudspeaker.ts'
import { referenceSplDb, relativeLevelDb, systemFigures } from '../../../src/core/box/system-figures.ts'
import { closedQtc, tuningOf } from '../../../src/core/box/tuning.ts'
import { completeDriver } from '../../../src/core/driver/complete.ts'
import { checks, expectWithin } from '../../outside/checks.ts'
import { loudspeakerOf } from '../../outside/circuit-cases.ts'

// The full circuit solved outside: named in each row.
it.each(checks('acoustics-checks.json', 'system-figures'))('$id', (check) => {
  const speaker = loudspeakerOf(check)
  const figures = systemFigures(speaker, check.inputs['drive'].voltageV)
  const actual = { ...tuningOf(speaker, figures), ...figures }
  for (const key of Object.keys(check.expected)) expectWithin(check, key, Reflect.get(actual, key))
})

// R. H. Small 1972, reference efficiency (from memory): 1 W counted into Re.
it.each(checks('acoustics-checks.json', 'sensitivity').filter((check) => check.id === 'eta0'))(
  '$id',
  (check) => {
    const driver = { ...check.inputs, qms: 3, sdCm2: 52 }
    const speaker = loudspeakerOf({
      ...check,
      inputs: {
        ...check.inputs,
        driver,
        box: { kind: 'closed', netVolumeL: 3 },
        drive: { sourceResistanceOhm: 0 },
      },
    })
    expectWithin(check, 'spl2V83Db', referenceSplDb(speaker.circuit, 2.83))
    expectWithin(check, 'spl1W1mDb', referenceSplDb(speaker.circuit, Math.sqrt(check.inputs['reOhm'])))
  },
)

// R. H. Small, closed box part I, response function; peak and f3 from closed formulas.
it.each(checks('acoustics-checks.json', 'alignment-closed'))('$id on the circuit', (check) => {
  const qtc: number = check.inputs['qtc']
  // A driver of which a box of its own Vas makes exactly this Qtc.
  const qts = qtc / Math.SQRT2
  const driver = { fsHz: 80, qms: 1e2, qts, vasL: 3, sdCm2: 50, reOhm: 4, leMh: 0 }
  const inputs = {
    driver,
    box: { kind: 'closed', netVolumeL: 3 },
    drive: { voltageV: 1, sourceResistanceOhm: 0 },
    air: { speedOfSoundMPerS: 343.994397, airDensityKgPerM3: 1.1993139 },
  }
  const speaker = loudspeakerOf({ ...check, inputs })
  const figures = systemFigures(speaker, 1)
  expect(speaker.boxHz).toBeCloseTo(80 * Math.SQRT2, 3)
  expectWithin(check, 'peakDb', figures.peakDb)
  expectWithin(check, 'f3OverFc', (figures.f3Hz ?? 0) / speaker.boxHz)
})

it('a classic vented box built as a circuit has the cut-off of its polynomial', () => {
  // A. N. Thiele 1971, Table I: Qts 0.303, h 1.23, Vb/Vas 0.339, f3/fs 1.45.
  const classic = classicVented(0.303, null)
  if (classic === null) throw new Error('no alignment')
  const completed = completeDriver(
    { fsHz: 50, qts: 0.303, qms: 90, vasL: 20, sdCm2: 130, reOhm: 6, leMh: 0 },
    '',
  )
  if ('faults' in completed) throw new Error('driver')
  const port = {
    totalAreaCm2: 20,
    tuningHz: classic.h * 50,
    lengthMm: null,
    effectiveLengthMm: 0,
    highestTuningHz: 200,
  }
  const geometry = {
    count: 1,
    shape: 'round',
    areaCm2: 20,
    radiusMm: 25,
    diameterMm: 50,
    outerEndMm: 0,
    innerEndMm: 0,
    neighboursOuterMm: 0,
    neighboursInnerMm: 0,
  } as const
  const speaker = loudspeaker({
    driver: completed.driver,
    group: groupOf(1, 'parallel'),
    netVolumeL: 20 / classic.alpha,
    losses: { leakageQ: null, absorptionQ: null, portQ: null, liningGain: 1 },
    opening: { kind: 'port', model: 'lumped', port: { ...port, geometry } },
    air: { speedMPerS: 343.994397, densityKgPerM3: 1.1993139 },
    sourceResistanceOhm: 0,
    solidAngle: 2 * Math.PI,
    extraMassKg: 0,
  })
  const figures = systemFigures(speaker, 1)
  expect((figures.f3Hz ?? 0) / 50).toBeCloseTo(1.45, 2)
  expect(relativeLevelDb(speaker, figures.f3Hz ?? 0)).toBeCloseTo(-3.0103, 3)
})

it('losses lower the Q of a closed box', () => {
  const lossless = closedQtc(0.5, 1, { leakageQ: null, absorptionQ: null, portQ: null, liningGain: 1 })
  // Qts√(1+α): R. H. Small 1972.
  expect(lossless).toBeCloseTo(0.5 * Math.SQRT2, 12)
  const lossy = closedQtc(0.5, 1, { leakageQ: 5, absorptionQ: 10, portQ: null, liningGain: 1 })
  // Half the stiffness is the box's (α = 1), so half of 1/5 + 1/10 adds to 1/Qtc; derived.
  expect(1 / lossy).toBeCloseTo(1 / lossless + 0.15, 12)
})
