import { type Static, Type } from 'typebox'
import { curveOf, maybeOf, outputOf } from './quantity.ts'

const volume = Type.Object(
  {
    positions: Type.Array(Type.Number(), { description: 'Turn of the knob, 0 to 1' }),
    attenuationDb: curveOf('dB', 'Attenuation there, loaded by the amplifier input'),
    wiring: Type.String({ description: 'What to solder where' }),
  },
  { additionalProperties: false, description: 'The volume control' },
)

/** What `/v1/power-budget` says of the way from the source to the output. */
export const gain = Type.Object(
  {
    clipAtSourceV: outputOf('V', 'RMS level of the source that just clips the amplifier with the knob open'),
    overdriveDb: outputOf('dB', 'Level of the source over that; negative: it never reaches clean power'),
    outputV: outputOf(
      'V',
      'RMS voltage the amplifier would have to give for the highest level of the source',
    ),
    couplingCornerHz: maybeOf(
      'Hz',
      'Corner of the coupling capacitor with the knob open; null without a capacitor',
    ),
    volume: Type.Unsafe<Static<typeof volume> | null>({
      anyOf: [volume, { type: 'null' }],
      description: 'The volume control; null when there is none',
    }),
  },
  { additionalProperties: false, description: 'From the source to the output' },
)
