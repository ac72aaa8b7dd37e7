import { type Static, type TSchema, Type } from 'typebox'
import { DriverParameters } from './driver.ts'
import { oneOf } from './one-of.ts'
import { curveOf, maybeOf, outputOf } from './quantity.ts'
import { ref } from './shared.ts'

const nullable = <S extends TSchema>(schema: S) =>
  Type.Unsafe<Static<S> | null>({ anyOf: [schema, { type: 'null' }] })

const SWEEPS = ['free-air', 'added-mass', 'known-volume'] as const

const figure = Type.Object(
  {
    figure: Type.String({ description: 'Which figure, with its unit in the name, as in parameters' }),
    value: outputOf('', 'Best value'),
    from: outputOf('', 'Lower end of the 95 % interval'),
    to: outputOf('', 'Upper end of the 95 % interval'),
    unit: Type.String({ description: 'Unit of the three; empty for ratios' }),
    uncertaintyPercent: outputOf('percent', 'Half of the interval over the value'),
    mainSource: oneOf(
      ['readings', 'added-mass', 'test-volume', 'cone-area', 'assumed-mass', 'dimensions'],
      'What the uncertainty comes from for the most part',
    ),
    mainSourceShare: outputOf('', 'Share of the variance that this source makes, 0 to 1'),
  },
  { additionalProperties: false, description: 'One figure of the driver with its uncertainty' },
)

const outlier = Type.Object(
  {
    sweep: oneOf(SWEEPS, 'In which sweep'),
    frequencyHz: outputOf('Hz', 'At which frequency'),
    measuredOhm: outputOf('ohm', 'As read'),
    fittedOhm: outputOf('ohm', 'As the other readings have it'),
  },
  {
    additionalProperties: false,
    description: 'A reading that was left out because it lies far off the rest',
  },
)

const curve = Type.Object(
  {
    sweep: oneOf(SWEEPS, 'Which sweep'),
    frequencyHz: curveOf('Hz', 'Frequencies of the sweep'),
    measuredOhm: curveOf('ohm', 'Impedance as measured'),
    measuredPhaseDeg: curveOf('deg', 'Phase as measured; empty when it was not'),
    fittedOhm: curveOf('ohm', 'Impedance of the fitted driver, leads included'),
    fittedPhaseDeg: curveOf('deg', 'Phase of the fitted driver'),
  },
  { additionalProperties: false, description: 'Measured and fitted curve on the same frequencies' },
)

const fit = Type.Object(
  {
    misfitPercent: outputOf('percent', 'Typical distance of the readings from the fitted curve (rms)'),
    phaseMisfitDeg: maybeOf('deg', 'The same of the phases; null when none were measured'),
    readings: Type.Integer({ description: 'Impedances and phases that count' }),
    unknowns: Type.Integer({ description: 'Values sought' }),
    converged: Type.Boolean({ description: 'false when the fit did not settle; then trust nothing' }),
    coil: oneOf(
      ['plain', 'lossy'],
      'Whether the coil is fitted as an inductance or, where the readings ask for it, with eddy-current loss',
    ),
  },
  { additionalProperties: false, description: 'How well the readings are explained' },
)

const secondOpinion = Type.Object(
  {
    method: Type.String({ description: 'Which published formulas, and from where' }),
    fsHz: outputOf('Hz', 'Highest point of the curve'),
    maximumOhm: outputOf('ohm', 'Impedance there'),
    lowerHz: maybeOf(
      'Hz',
      'Below it, where the impedance is the root of Re times that; null if not in the sweep',
    ),
    upperHz: maybeOf('Hz', 'The same above it'),
    qms: maybeOf('', 'Mechanical Q by the formulas; null if a flank is missing'),
    qes: maybeOf('', 'Electrical Q by the formulas'),
    qts: maybeOf('', 'Total Q by the formulas'),
    vasL: maybeOf('L', 'Compliance volume by the formulas; null without added mass or box'),
  },
  { additionalProperties: false, description: 'The published hand formulas: a check of the fit' },
)

const effect = Type.Object(
  {
    figure: Type.String({ description: 'Which uncertain figure' }),
    uncertaintyPercent: outputOf('percent', 'Half of its 95 % interval'),
    qtcChange: outputOf('', 'What that makes of the total Q of the closed box, plus or minus'),
    fcChangeHz: outputOf('Hz', 'What it makes of its resonance, plus or minus'),
    ventedVolumeChangePercent: maybeOf(
      'percent',
      'What it makes of the volume of the classic vented box; null where none suits',
    ),
    ventedTuningChangePercent: maybeOf('percent', 'What it makes of its tuning; null where none suits'),
  },
  { additionalProperties: false, description: 'What one uncertainty does to a box, all else as measured' },
)

const next = Type.Object(
  {
    do: Type.String({ description: 'What to measure next' }),
    shrinks: Type.String({ description: 'Which figure it makes surer' }),
    nowPercent: outputOf('percent', 'Its uncertainty now'),
    thenPercent: outputOf('percent', 'What it would be about, all else as it is'),
    frequencyHz: curveOf('Hz', 'At which frequencies; empty where it is no question of them'),
  },
  { additionalProperties: false, description: 'One more measurement that is worth while, best first' },
)

const result = Type.Object(
  {
    id: Type.String({ description: 'Which driver' }),
    parameters: ref(DriverParameters),
    figures: Type.Array(figure, { description: 'Every figure with its 95 % interval' }),
    fit,
    outliers: Type.Array(outlier, { description: 'Readings that were left out' }),
    curves: Type.Array(curve, { description: 'One a sweep, for plotting' }),
    secondOpinion: nullable(secondOpinion),
    effects: Type.Array(effect, { description: 'What each uncertainty does to a box' }),
    next: Type.Array(next, { description: 'What to measure next' }),
  },
  {
    additionalProperties: false,
    description: 'One measured driver; parameters fit wherever a calculation takes driver parameters',
  },
)
export type MeasuredResult = Static<typeof result>

const pair = Type.Object(
  {
    first: Type.String({ description: 'One driver' }),
    second: Type.String({ description: 'The other' }),
    fsPercent: outputOf('percent', 'Difference of the resonances'),
    qtsPercent: outputOf('percent', 'Difference of the total Q'),
    rePercent: outputOf('percent', 'Difference of the resistances'),
    vasPercent: outputOf('percent', 'Difference of the compliances'),
    levelDb: outputOf('dB', 'Difference of the levels at one voltage, mid-band'),
    impedancePercent: maybeOf(
      'percent',
      'Typical distance of the two fitted curves over an octave about the resonances',
    ),
    score: outputOf(
      '',
      'Largest difference in multiples of what is still good, each reduced by what is only uncertainty; 1 and below is a pair',
    ),
    chosen: Type.Boolean({ description: 'Whether these two go together, so that the pairs match best' }),
  },
  { additionalProperties: false, description: 'How well two drivers match' },
)
export type PairRow = Static<typeof pair>

const guessedRange = Type.Object(
  {
    figure: Type.String({ description: 'Which figure, with its unit in the name, as in parameters' }),
    value: outputOf('', 'The guess'),
    from: outputOf('', 'Lower end of where most such drivers lie'),
    to: outputOf('', 'Upper end of it'),
    unit: Type.String({ description: 'Unit of the three; empty for ratios' }),
  },
  { additionalProperties: false, description: 'How far a guessed figure may be off' },
)

const guess = Type.Object(
  {
    parameters: ref(DriverParameters),
    ranges: Type.Array(guessedRange, {
      description: 'Every guessed figure with its range, total Q among them',
    }),
    why: Type.String({ description: 'Where the guess comes from' }),
  },
  {
    additionalProperties: false,
    description:
      'The driver as its size and a meter let one guess it, to plan before measuring; say guessed at the driver when it is used. null when the size is not known, or the cone is beyond 20 to 400 mm',
  },
)

const plan = Type.Object(
  {
    id: Type.String({ description: 'Which driver' }),
    expectedFsHz: outputOf('Hz', 'Where its resonance may be, within a factor of two'),
    frequencyHz: curveOf('Hz', 'First round of frequencies, low to high'),
    resistorOhm: outputOf('ohm', 'Resistor in series with the driver, a usual value'),
    resistorPowerW: outputOf('W', 'Rating of it, a usual value with a wide margin'),
    generatorV: outputOf('V', 'RMS voltage of the generator at most'),
    driverV: outputOf('V', 'RMS voltage at the driver that is not to be passed, at its peak'),
    addedMassG: outputOf('g', 'Mass for the second sweep'),
    boxVolumeL: outputOf('L', 'Closed box for a second sweep, instead of the mass'),
    guess: nullable(guess),
    steps: Type.Array(Type.String(), { description: 'What to do, in order' }),
  },
  { additionalProperties: false, description: 'How to measure a driver of which there is no sweep yet' },
)
export type MeasurementPlan = Static<typeof plan>

export const driverMeasurementSections = {
  measured: Type.Array(result, { description: 'Every driver with a sweep' }),
  pairs: Type.Array(pair, { description: 'Every two of them, best match first' }),
  plan: Type.Array(plan, { description: 'Every driver without a sweep' }),
}

export interface DriverMeasurementSections {
  measured: MeasuredResult[]
  pairs: PairRow[]
  plan: MeasurementPlan[]
}
