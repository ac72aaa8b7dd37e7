import { type Static, Type } from 'typebox'
import { DriverFrame } from './driver.ts'
import { oneOf } from './one-of.ts'
import { quantity } from './quantity.ts'
import { ref, share } from './shared.ts'

export const Slot = share(
  'Slot',
  Type.Object(
    {
      widthMm: quantity('mm', 'Inside width of the slot', { minimum: 1, maximum: 2000, examples: [75] }),
      heightMm: quantity('mm', 'Inside height of the slot', { minimum: 1, maximum: 2000, examples: [15] }),
      onWall: Type.Optional(
        Type.Boolean({
          description: 'true when a long side of the slot is a wall of the box; false when left out',
        }),
      ),
    },
    { additionalProperties: false, description: 'A rectangular port' },
  ),
)
export type Slot = Static<typeof Slot>

export const PortEnds = share(
  'PortEnds',
  Type.Object(
    {
      outer: Type.Optional(
        oneOf(
          ['flanged', 'free'],
          'Outer end: flush in a panel (flanged, assumed when left out) or standing free',
        ),
      ),
      inner: Type.Optional(
        oneOf(
          ['flanged', 'free'],
          'Inner end: standing free in the box (assumed when left out) or flush in a wall',
        ),
      ),
    },
    { additionalProperties: false, description: 'How each end of the port is mounted' },
  ),
)
export type PortEnds = Static<typeof PortEnds>

const Elbows = share(
  'Elbows',
  Type.Object(
    {
      count: Type.Integer({ description: 'Quarter bends', minimum: 1, maximum: 4, examples: [1] }),
      radiusMm: Type.Optional(
        quantity('mm', 'Radius of the middle of a bend; one and a half inner diameters when left out', {
          minimum: 2,
          maximum: 1000,
          examples: [39],
        }),
      ),
    },
    { additionalProperties: false, description: 'Bends in the tube; lengths count along its middle' },
  ),
)

/** The fields that say what a port is; the request of `/v1/port` has them at its top level. */
export const portFields = {
  count: Type.Optional(
    Type.Integer({ description: 'Equal ports; 1 when left out', minimum: 1, maximum: 12, examples: [1] }),
  ),
  shape: Type.Optional(oneOf(['round', 'slot'], 'round or slot; follows from the sizes when left out')),
  innerDiameterMm: Type.Optional(
    quantity('mm', 'Inner diameter of the tube', { minimum: 2, maximum: 500, examples: [26] }),
  ),
  outerDiameterMm: Type.Optional(
    quantity('mm', 'Outer diameter of the tube', { minimum: 2, maximum: 520, examples: [32] }),
  ),
  slot: Type.Optional(ref(Slot)),
  spacingMm: Type.Optional(
    quantity('mm', 'Distance between the centres of neighbouring ports; two inner diameters when left out', {
      minimum: 2,
      maximum: 5000,
    }),
  ),
  ends: Type.Optional(ref(PortEnds)),
  elbows: Type.Optional(ref(Elbows)),
  tuningHz: Type.Optional(
    quantity('Hz', 'Wanted tuning; give this or lengthMm', { minimum: 5, maximum: 2000, examples: [105] }),
  ),
  lengthMm: Type.Optional(
    quantity('mm', 'Length of the tube along its middle; give this or tuningHz', {
      minimum: 1,
      maximum: 3000,
      examples: [40],
    }),
  ),
}

export const Port = share(
  'Port',
  Type.Object(
    {
      ...portFields,
      model: Type.Optional(
        oneOf(
          ['tube', 'lumped'],
          'tube (default): a pipe with its resonances; lumped: one moving plug of air',
        ),
      ),
    },
    { additionalProperties: false, description: 'The port of a vented box' },
  ),
)
export type Port = Static<typeof Port>

export const PassiveRadiator = share(
  'PassiveRadiator',
  Type.Object(
    {
      count: Type.Optional(
        Type.Integer({ description: 'Equal radiators; 1 when left out', minimum: 1, maximum: 8 }),
      ),
      fsHz: quantity('Hz', 'Free-air resonance of the radiator', {
        minimum: 1,
        maximum: 1000,
        examples: [45],
      }),
      qms: Type.Number({
        description: 'Mechanical Q of the radiator',
        minimum: 0.1,
        maximum: 100,
        examples: [8],
      }),
      vasL: quantity('L', 'Air volume as stiff as its suspension', {
        minimum: 0.001,
        maximum: 2000,
        examples: [4],
      }),
      sdCm2: quantity('cm2', 'Effective area', { minimum: 0.2, maximum: 3000, examples: [60] }),
      addedMassG: Type.Optional(
        quantity('g', 'Mass added to the radiator; 0 when left out', { minimum: 0, maximum: 5000 }),
      ),
      xmaxMm: Type.Optional(
        quantity('mm', 'Peak excursion one way that stays clean', { minimum: 0.1, maximum: 200 }),
      ),
      frame: Type.Optional(ref(DriverFrame)),
    },
    {
      additionalProperties: false,
      description: 'An undriven cone in place of a port; its hole is in the back',
    },
  ),
)
export type PassiveRadiator = Static<typeof PassiveRadiator>

/** A tube on hand, long enough or not. */
export const Tube = share(
  'Tube',
  Type.Object(
    {
      innerDiameterMm: quantity('mm', 'Inner diameter', { minimum: 2, maximum: 500, examples: [26] }),
      outerDiameterMm: Type.Optional(quantity('mm', 'Outer diameter', { minimum: 2, maximum: 520 })),
      lengthMm: Type.Optional(quantity('mm', 'Length on hand', { minimum: 1, maximum: 10_000 })),
    },
    { additionalProperties: false, description: 'A tube on hand' },
  ),
)
export type Tube = Static<typeof Tube>
