import { type Static, Type } from 'typebox'
import { quantity } from './quantity.ts'
import { ref, share } from './shared.ts'

export const DriverParameters = share(
  'DriverParameters',
  Type.Object(
    {
      fsHz: Type.Optional(
        quantity('Hz', 'Free-air resonance', { minimum: 5, maximum: 20_000, examples: [124] }),
      ),
      qms: Type.Optional(
        Type.Number({ description: 'Mechanical Q at fs', minimum: 0.05, maximum: 100, examples: [3.2] }),
      ),
      qes: Type.Optional(
        Type.Number({ description: 'Electrical Q at fs', minimum: 0.02, maximum: 100, examples: [0.55] }),
      ),
      qts: Type.Optional(
        Type.Number({ description: 'Total Q at fs', minimum: 0.02, maximum: 100, examples: [0.47] }),
      ),
      vasL: Type.Optional(
        quantity('L', 'Air volume as stiff as the suspension', {
          minimum: 0.001,
          maximum: 2000,
          examples: [0.92],
        }),
      ),
      sdCm2: Type.Optional(
        quantity('cm2', 'Effective cone area', { minimum: 0.2, maximum: 3000, examples: [28] }),
      ),
      reOhm: Type.Optional(
        quantity('ohm', 'DC resistance of the voice coil, as a meter reads it', {
          minimum: 0.1,
          maximum: 2000,
          examples: [3.4],
        }),
      ),
      leMh: Type.Optional(
        quantity('mH', 'Voice-coil inductance', { minimum: 0, maximum: 100, examples: [0.06] }),
      ),
      leExponent: Type.Optional(
        Type.Number({
          description:
            'How a lossy coil grows with frequency, n in (jω)^n: 1 for a pure inductance (taken when left out), 0.5 for full eddy-current loss, usually 0.6 to 0.8; leMh then holds at 1 kHz',
          minimum: 0.3,
          maximum: 1,
          examples: [0.7],
        }),
      ),
      mmsG: Type.Optional(quantity('g', 'Moving mass with its air load', { minimum: 0.01, maximum: 2000 })),
      cmsMmPerN: Type.Optional(
        quantity('mm/N', 'Compliance of the suspension', { minimum: 0.001, maximum: 100 }),
      ),
      rmsKgPerS: Type.Optional(
        quantity('kg/s', 'Mechanical resistance of the suspension', { minimum: 0.001, maximum: 1000 }),
      ),
      blTm: Type.Optional(quantity('T.m', 'Motor strength', { minimum: 0.05, maximum: 100 })),
      xmaxMm: Type.Optional(
        quantity('mm', 'Peak excursion one way that stays clean', {
          minimum: 0.05,
          maximum: 100,
          examples: [2.2],
        }),
      ),
      ratedPowerW: Type.Optional(
        quantity('W', 'Rated power', { minimum: 0.01, maximum: 5000, examples: [12] }),
      ),
      ratedImpedanceOhm: Type.Optional(
        quantity('ohm', 'Rated (nominal) impedance printed on the driver', {
          minimum: 0.5,
          maximum: 2000,
          examples: [4],
        }),
      ),
    },
    {
      additionalProperties: false,
      description: 'Thiele–Small and rating data; any sufficient part of it completes the rest',
    },
  ),
)
export type DriverParameters = Static<typeof DriverParameters>

export const DriverFrame = share(
  'DriverFrame',
  Type.Object(
    {
      outerDiameterMm: quantity('mm', 'Outer diameter of the flange', {
        minimum: 5,
        maximum: 1000,
        examples: [76],
      }),
      cutoutDiameterMm: quantity('mm', 'Cut-out the basket needs', {
        minimum: 3,
        maximum: 1000,
        examples: [66],
      }),
      boltCircleDiameterMm: Type.Optional(
        quantity('mm', 'Diameter of the circle of screw holes', {
          minimum: 4,
          maximum: 1000,
          examples: [71],
        }),
      ),
      boltCount: Type.Optional(
        Type.Integer({ description: 'Screw holes on that circle', minimum: 2, maximum: 24, examples: [4] }),
      ),
      depthMm: quantity('mm', 'Depth from the front face of the flange to the back of the magnet', {
        minimum: 2,
        maximum: 1000,
        examples: [38],
      }),
      flangeThicknessMm: Type.Optional(
        quantity('mm', 'Thickness of the flange', { minimum: 0, maximum: 50, examples: [3] }),
      ),
      magnetDiameterMm: Type.Optional(
        quantity('mm', 'Diameter of the magnet', { minimum: 2, maximum: 1000, examples: [45] }),
      ),
      displacementL: Type.Optional(
        quantity('L', 'Air the driver takes up inside the box', {
          minimum: 0,
          maximum: 100,
          examples: [0.05],
        }),
      ),
      massKg: Type.Optional(quantity('kg', 'Mass of the driver', { minimum: 0.001, maximum: 100 })),
    },
    { additionalProperties: false, description: 'What a rule measures on the driver' },
  ),
)
export type DriverFrame = Static<typeof DriverFrame>

export const Driver = share(
  'Driver',
  Type.Object(
    {
      id: Type.String({
        description: 'Name used in the wiring',
        minLength: 1,
        maxLength: 60,
        examples: ['main'],
      }),
      count: Type.Optional(
        Type.Integer({
          description: 'How many in each box; 1 when left out',
          minimum: 1,
          maximum: 16,
          examples: [2],
        }),
      ),
      parameters: ref(DriverParameters),
      frame: Type.Optional(ref(DriverFrame)),
      sharesBox: Type.Optional(
        Type.Boolean({
          description: 'false for a driver with its own closed back, a tweeter say; true when left out',
        }),
      ),
      guessed: Type.Optional(
        Type.Boolean({
          description:
            'true when the parameters are a guess and not measured or printed; the verdict on a box is then never ready; false when left out',
        }),
      ),
    },
    { additionalProperties: false, description: 'Equal drivers of one box' },
  ),
)
export type Driver = Static<typeof Driver>
