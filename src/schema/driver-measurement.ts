import { type Static, Type } from 'typebox'
import { ImpedanceSweep } from './impedance-sweep.ts'
import { quantity } from './quantity.ts'
import { ref, share } from './shared.ts'

const tolerance = (description: string, example: number) =>
  quantity('percent', description, { minimum: 0, maximum: 50, examples: [example] })

const WithMass = share(
  'SweepWithMass',
  Type.Object(
    {
      massG: quantity('g', 'Mass that was stuck to the cone', { minimum: 0.01, maximum: 500, examples: [2] }),
      tolerancePercent: Type.Optional(
        tolerance('How sure that mass is, plus or minus; 2 when left out: letter scales and putty', 2),
      ),
      sweep: ref(ImpedanceSweep),
    },
    { additionalProperties: false, description: 'The same driver in free air, with a mass on its cone' },
  ),
)

const InBox = share(
  'SweepInBox',
  Type.Object(
    {
      volumeL: quantity('L', 'Air behind the cone: box less what the driver takes up, plus its cone', {
        minimum: 0.01,
        maximum: 500,
        examples: [1],
      }),
      tolerancePercent: Type.Optional(
        tolerance('How sure that volume is, plus or minus; 3 when left out: rule and calculator', 3),
      ),
      sweep: ref(ImpedanceSweep),
    },
    { additionalProperties: false, description: 'The same driver on a tight closed box without lining' },
  ),
)

export const DriverDimensions = share(
  'DriverDimensions',
  Type.Object(
    {
      surroundDiameterMm: Type.Optional(
        quantity('mm', 'Diameter of the cone, from the middle of the surround to its middle opposite', {
          minimum: 5,
          maximum: 600,
          examples: [60],
        }),
      ),
      coilDiameterMm: Type.Optional(
        quantity('mm', 'Diameter of the voice coil', { minimum: 4, maximum: 200, examples: [20] }),
      ),
      coilHeightMm: Type.Optional(
        quantity('mm', 'Height of the winding', { minimum: 0.5, maximum: 100, examples: [6] }),
      ),
      gapHeightMm: Type.Optional(
        quantity('mm', 'Thickness of the front plate round the gap', {
          minimum: 0.5,
          maximum: 50,
          examples: [3],
        }),
      ),
    },
    { additionalProperties: false, description: 'What a rule measures on a driver without a data sheet' },
  ),
)
export type DriverDimensions = Static<typeof DriverDimensions>

export const MeasuredDriver = share(
  'MeasuredDriver',
  Type.Object(
    {
      id: Type.String({
        description: 'Name of the driver, to tell it from the others',
        minLength: 1,
        maxLength: 60,
        examples: ['left'],
      }),
      freeAir: Type.Optional(ref(ImpedanceSweep)),
      withMass: Type.Optional(ref(WithMass)),
      inBox: Type.Optional(ref(InBox)),
      meterOhm: Type.Optional(
        quantity('ohm', 'Direct-current resistance as a meter reads it, the leads of the meter taken off', {
          minimum: 0.1,
          maximum: 2000,
          examples: [3.4],
        }),
      ),
      leadOhm: Type.Optional(
        quantity('ohm', 'Resistance of leads and clips that is in the sweeps; 0 when left out', {
          minimum: 0,
          maximum: 10,
          examples: [0.1],
        }),
      ),
      sdCm2: Type.Optional(
        quantity('cm2', 'Effective cone area where it is known; else from dimensions', {
          minimum: 0.2,
          maximum: 3000,
          examples: [28],
        }),
      ),
      mmsG: Type.Optional(
        Type.Object(
          {
            fromG: quantity('g', 'Least', { minimum: 0.01, maximum: 2000, examples: [1.5] }),
            toG: quantity('g', 'Most', { minimum: 0.01, maximum: 2000, examples: [3] }),
          },
          {
            additionalProperties: false,
            description:
              'Range of the moving mass where neither a mass nor a box was used; assumed when left out',
          },
        ),
      ),
      dimensions: Type.Optional(ref(DriverDimensions)),
      ratedImpedanceOhm: Type.Optional(
        quantity('ohm', 'Rated impedance printed on the driver', {
          minimum: 0.5,
          maximum: 2000,
          examples: [4],
        }),
      ),
    },
    {
      additionalProperties: false,
      description: 'One driver and what was measured of it; without freeAir the answer is how to measure it',
    },
  ),
)
export type MeasuredDriver = Static<typeof MeasuredDriver>

export const DriverMeasurementRequest = share(
  'DriverMeasurementRequest',
  Type.Object(
    {
      drivers: Type.Array(ref(MeasuredDriver), {
        description: 'One driver, or several that shall be told apart and paired',
        minItems: 1,
        maxItems: 8,
      }),
      boxVolumeL: Type.Optional(
        quantity(
          'L',
          'Closed box for which the uncertainties are said; the one of total Q 0.707 when left out',
          { minimum: 0.02, maximum: 1000, examples: [1.2] },
        ),
      ),
    },
    { additionalProperties: false, description: 'Drivers on the bench and their impedance sweeps' },
  ),
)
export type DriverMeasurementRequest = Static<typeof DriverMeasurementRequest>
