import { type Static, Type } from 'typebox'
import { quantity } from './quantity.ts'
import { share } from './shared.ts'

export const Cable = share(
  'Cable',
  Type.Object(
    {
      lengthM: quantity('m', 'Length of the lead, one way', { minimum: 0, maximum: 100, examples: [1.2] }),
      gaugeAwg: Type.Optional(
        quantity('AWG', 'Wire gauge number; 24 when no cross-section is given either', {
          minimum: 0,
          maximum: 40,
          examples: [22],
        }),
      ),
      areaMm2: Type.Optional(
        quantity('mm2', 'Cross-section of a conductor, in place of the gauge and never with it', {
          minimum: 0.005,
          maximum: 100,
          examples: [0.34],
        }),
      ),
      contacts: Type.Optional(
        Type.Integer({ description: 'Plug contacts in the loop; 4 when left out', minimum: 0, maximum: 20 }),
      ),
      contactResistanceOhm: Type.Optional(
        quantity('ohm', 'Resistance of one contact; 0.03 when left out', { minimum: 0, maximum: 5 }),
      ),
      marked5A: Type.Optional(
        Type.Boolean({
          description: 'true for a Type-C lead that is electronically marked for 5 A; false when left out',
        }),
      ),
      copperClad: Type.Optional(Type.Boolean({ description: 'true for copper-clad aluminium' })),
    },
    { additionalProperties: false, description: 'A two-wire lead' },
  ),
)
export type Cable = Static<typeof Cable>
