import { type Static, type TSchema, Type } from 'typebox'
import { Design } from './design.ts'
import { ImpedanceSweep } from './impedance-sweep.ts'
import { oneOf } from './one-of.ts'
import { curveOf, maybeOf, outputOf, quantity } from './quantity.ts'
import { ref, share } from './shared.ts'

export const MeasuredBox = share(
  'MeasuredBox',
  Type.Object(
    {
      sweep: ref(ImpedanceSweep),
      leadOhm: Type.Optional(
        quantity(
          'ohm',
          'Resistance of the lead between instrument and terminals, out and back, when the readings hold it; 0 when left out',
          { minimum: 0, maximum: 100, examples: [0.1] },
        ),
      ),
      box: Type.Optional(
        Type.String({
          description: 'Which box of the set was measured; only repeated in the answer',
          maxLength: 60,
          examples: ['left'],
        }),
      ),
    },
    {
      additionalProperties: false,
      description: 'Impedance at the terminals of one channel of one finished box, amplifier not connected',
    },
  ),
)
export type MeasuredBox = Static<typeof MeasuredBox>

export const AsBuiltRequest = share(
  'AsBuiltRequest',
  Type.Object(
    { design: ref(Design), measured: ref(MeasuredBox) },
    { additionalProperties: false, description: 'The plan, and one of the finished boxes measured' },
  ),
)
export type AsBuiltRequest = Static<typeof AsBuiltRequest>

const nullable = <S extends TSchema>(schema: S) =>
  Type.Unsafe<Static<S> | null>({ anyOf: [schema, { type: 'null' }] })

const estimate = (unit: Parameters<typeof outputOf>[0], description: string) =>
  nullable(
    Type.Object(
      {
        value: maybeOf(unit, 'Best value; of a loss Q null for no loss that could be measured'),
        from: maybeOf(unit, 'Lower end of the 95 % interval; null where the data set none'),
        to: maybeOf(unit, 'Upper end of the 95 % interval; null where the data set none'),
      },
      { additionalProperties: false, description },
    ),
  )

const built = Type.Object(
  {
    box: Type.String({ description: 'Which box was measured, as the request named it; else empty' }),
    state: oneOf(
      [
        'as-wired',
        'port-blocked',
        'driver-reversed',
        'driver-open',
        'driver-shorted',
        'other-joint',
        'not-found',
      ],
      'What explains the curve best: the plan with other figures, one fault, or nothing that was tried',
    ),
    tuningHz: estimate(
      'Hz',
      'Tuning fb of a vented or passive-radiator box; null for a closed or blocked one',
    ),
    resonanceHz: estimate('Hz', 'Resonance fc of a closed box; null for one with an opening'),
    qtc: estimate('', 'Total Q of a closed box at its terminals, box losses counted; null otherwise'),
    effectiveVolumeL: estimate(
      'L',
      'Air that the cone feels, lining counted, if the moving mass (closed box: the suspension as well) is as in the driver data',
    ),
    leakageQ: estimate('', 'Leakage loss QL at the box resonance'),
    absorptionQ: estimate('', 'Absorption loss QA at the box resonance'),
    lossQ: estimate(
      '',
      'All three losses as one, which the curve shows best: 1/QB = 1/QL + 1/QA + 1/QP, the friction QP of a port as planned',
    ),
    lossesToldApart: Type.Boolean({
      description:
        'false when the curve does not say which loss is which: leakageQ and absorptionQ then trade against each other and only lossQ is sure. Friction in a port is never told apart from that of the driver: it stays as planned',
    }),
    meterOhm: estimate('ohm', 'Direct-current resistance at the terminals; null where a capacitor blocks it'),
    driverResonanceHz: estimate('Hz', 'Free-air resonance of the driver, where the box lets it be told'),
    tubeLengthMm: estimate(
      'mm',
      'Length of port that would tune the measured volume to the measured frequency; null without a port',
    ),
    driverQms: estimate('', 'Mechanical Q of the driver, where the box lets it be told'),
    motorStrengthTm: estimate(
      'T.m',
      'Motor strength Bl of each driver, if the moving mass is as in its data',
    ),
    misfitPercent: maybeOf('percent', 'Typical distance of the readings from the fitted curve'),
  },
  { additionalProperties: false, description: 'The box as it was built; null where the data do not say' },
)

const comparisonRow = Type.Object(
  {
    figure: Type.String({ description: 'Which figure, with its unit in the name, as in built' }),
    planned: maybeOf('', 'The figure of the plan; null for no such loss'),
    measured: maybeOf('', 'The measured figure; of a loss null for none that could be measured'),
    from: maybeOf('', 'Lower end of the 95 % interval; null where the data set none'),
    to: maybeOf('', 'Upper end of the 95 % interval; null where the data set none'),
    unit: Type.String({ description: 'Unit of the figures; empty for ratios' }),
    differencePercent: maybeOf('percent', 'Measured over planned; null where one of them does not exist'),
    tolerancePercent: maybeOf(
      'percent',
      'How far off is still good; null for losses, where only more loss than planned counts',
    ),
    within: Type.Boolean({
      description: 'Whether the figure is as planned, or too uncertain to say otherwise',
    }),
  },
  { additionalProperties: false, description: 'One figure, planned and measured' },
)

const secondOpinion = Type.Object(
  {
    method: Type.String({ description: 'Which published formulas, and from where' }),
    lowerPeakHz: maybeOf('Hz', 'Lower impedance peak, of a vented box'),
    dipHz: maybeOf('Hz', 'Dip between the peaks, of a vented box'),
    upperPeakHz: maybeOf('Hz', 'Upper impedance peak; the only one of a closed box'),
    resonanceHz: maybeOf('Hz', 'fb or fc by the formulas'),
    alpha: maybeOf('', 'Compliance ratio Vas/Vab by the formulas'),
    effectiveVolumeL: maybeOf(
      'L',
      'Volume from that ratio and the driver data; null when the ratio is not above 0',
    ),
    leakageQ: maybeOf(
      '',
      'All losses as leakage QL by the formulas; null for a closed box and where they fail',
    ),
  },
  {
    additionalProperties: false,
    description:
      'The published hand formulas on peaks and dip: a check of the fit, off by 3 to 7 % at usual leakage',
  },
)

const cause = Type.Object(
  {
    code: Type.String({ description: 'Code of the finding that says more' }),
    strength: outputOf(
      '',
      'How far beyond what is still good, in multiples of it; faults of the wiring come first, with how clearly the curve prefers them',
    ),
  },
  { additionalProperties: false, description: 'One likely cause' },
)

const impedance = Type.Object(
  {
    frequencyHz: curveOf('Hz', 'Frequencies of the sweep'),
    measuredOhm: curveOf('ohm', 'Impedance as measured, lead included'),
    measuredPhaseDeg: curveOf('deg', 'Phase as measured; empty when it was not'),
    fittedOhm: curveOf('ohm', 'Impedance of the box as found, lead included; empty when none was found'),
    plannedOhm: curveOf('ohm', 'Impedance of the box as planned, lead included'),
    plannedPhaseDeg: curveOf('deg', 'Phase of the box as planned'),
  },
  { additionalProperties: false, description: 'Measured, fitted and planned curve on the same frequencies' },
)

export const asBuiltSections = {
  built,
  comparison: Type.Array(comparisonRow, {
    description: 'Every figure beside the one of the plan; empty when the curve could not be explained',
  }),
  causes: Type.Array(cause, { description: 'Likely causes of what is off, most likely first' }),
  secondOpinion: nullable(secondOpinion),
  impedance,
}

export interface AsBuiltSections {
  built: Static<typeof built>
  comparison: Static<typeof comparisonRow>[]
  causes: Static<typeof cause>[]
  secondOpinion: Static<typeof secondOpinion> | null
  impedance: Static<typeof impedance>
}
