import { type Static, Type } from 'typebox'
import { Air } from './air.ts'
import { Box } from './box.ts'
import { Space } from './design.ts'
import { DriverFrame, DriverParameters } from './driver.ts'
import { oneOf } from './one-of.ts'
import { PassiveRadiator, Port, Tube } from './port.ts'
import { quantity } from './quantity.ts'
import { ref, share } from './shared.ts'

export const Drive = share(
  'Drive',
  Type.Object(
    {
      voltageV: Type.Optional(
        quantity('V', 'RMS voltage of the amplifier on the channel; 2.83 when left out', {
          minimum: 0.001,
          maximum: 200,
          examples: [2.83],
        }),
      ),
      sourceResistanceOhm: Type.Optional(
        quantity('ohm', 'Resistance of amplifier output and leads; 0 when left out', {
          minimum: 0,
          maximum: 1000,
          examples: [0.2],
        }),
      ),
    },
    { additionalProperties: false, description: 'What drives the channel' },
  ),
)

export const Curve = share(
  'Curve',
  Type.Object(
    {
      fromHz: Type.Optional(
        quantity('Hz', 'First frequency; 20 when left out', { minimum: 1, maximum: 20_000, examples: [20] }),
      ),
      toHz: Type.Optional(
        quantity('Hz', 'Last frequency; 20000 when left out', {
          minimum: 2,
          maximum: 40_000,
          examples: [20_000],
        }),
      ),
      points: Type.Optional(
        Type.Integer({
          description: 'Points, log-spaced, both ends included; 200 when left out',
          minimum: 2,
          maximum: 2000,
          examples: [200],
        }),
      ),
    },
    { additionalProperties: false, description: 'The frequencies of the curves' },
  ),
)
export type Curve = Static<typeof Curve>

export const BoxTuningRequest = share(
  'BoxTuningRequest',
  Type.Object(
    {
      driver: ref(DriverParameters),
      driverCount: Type.Optional(
        Type.Integer({
          description: 'Equal drivers in the box; 1 when left out',
          minimum: 1,
          maximum: 16,
          examples: [1],
        }),
      ),
      driverWiring: Type.Optional(
        oneOf(['parallel', 'series'], 'How they are connected; parallel when left out'),
      ),
      frame: Type.Optional(ref(DriverFrame)),
      box: ref(Box),
      port: Type.Optional(ref(Port)),
      passiveRadiator: Type.Optional(ref(PassiveRadiator)),
      drive: Type.Optional(ref(Drive)),
      air: Type.Optional(ref(Air)),
      space: Type.Optional(Space),
      curve: Type.Optional(ref(Curve)),
      driverSpacingMm: Type.Optional(
        quantity('mm', 'Distance between the centres of two neighbouring drivers', {
          minimum: 5,
          maximum: 5000,
          examples: [80],
        }),
      ),
      wantedQtc: Type.Optional(
        Type.Number({
          description: 'Total Q wanted of a closed box; its volume then stands in suitedBoxes',
          minimum: 0.3,
          maximum: 3,
          examples: [0.8],
        }),
      ),
      tubes: Type.Optional(
        Type.Array(ref(Tube), { description: 'Tubes on hand, to compare at the same tuning', maxItems: 20 }),
      ),
    },
    { additionalProperties: false, description: 'Driver, box and opening' },
  ),
)
export type BoxTuningRequest = Static<typeof BoxTuningRequest>
