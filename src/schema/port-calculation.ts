import { type Static, Type } from 'typebox'
import { Air } from './air.ts'
import { portFields, Tube } from './port.ts'
import { maybeOf, outputOf, quantity } from './quantity.ts'
import { ref, share } from './shared.ts'

export const PortRequest = share(
  'PortRequest',
  Type.Object(
    {
      netVolumeL: quantity('L', 'Free air in the box', { minimum: 0.02, maximum: 1000, examples: [3] }),
      ...portFields,
      tubes: Type.Optional(
        Type.Array(ref(Tube), { description: 'Other tubes on hand, to compare', maxItems: 20 }),
      ),
      air: Type.Optional(ref(Air)),
    },
    { additionalProperties: false, description: 'A box volume and a port, with its tuning or its length' },
  ),
)
export type PortRequest = Static<typeof PortRequest>

export const portSections = {
  port: Type.Object(
    {
      tuningHz: outputOf('Hz', 'Tuning of the box with this port'),
      lengthMm: maybeOf('mm', 'Length of the tube; null when no length reaches the tuning'),
      straightMm: maybeOf(
        'mm',
        'Straight tube to cut beside the bends; the length itself without bends, null without a length',
      ),
      effectiveLengthMm: outputOf('mm', 'Length of the moving air, ends included'),
      areaCm2: outputOf('cm2', 'Area of all ports together'),
      equivalentDiameterMm: outputOf('mm', 'Diameter of one round port of the same area as one port'),
      pipeResonanceHz: maybeOf('Hz', 'First resonance of the tube as a pipe; null without a length'),
      highestTuningHz: outputOf(
        'Hz',
        'Tuning with no tube at all, only the hole: the highest this opening reaches',
      ),
    },
    { additionalProperties: false, description: 'The port' },
  ),
  endCorrections: Type.Array(
    Type.Object(
      {
        end: Type.String({ description: 'Which end, and how it is mounted' }),
        lengthMm: outputOf('mm', 'Length it adds'),
        source: Type.String({ description: 'Where the figure is published' }),
      },
      { additionalProperties: false },
    ),
    { description: 'Every length that the ends add' },
  ),
  alternatives: Type.Array(
    Type.Object(
      {
        innerDiameterMm: outputOf('mm', 'Inner diameter of the tube'),
        count: Type.Integer({ description: 'Tubes of this kind' }),
        lengthMm: maybeOf('mm', 'Length that gives the same tuning; null when none does'),
        longEnough: Type.Unsafe<boolean | null>({
          type: ['boolean', 'null'],
          description: 'Whether the tube on hand yields it; null when its length is not given',
        }),
      },
      { additionalProperties: false },
    ),
    { description: 'The same tuning from the tubes on hand' },
  ),
}

const PortSectionsObject = Type.Object(portSections)
export type PortSections = Static<typeof PortSectionsObject>
