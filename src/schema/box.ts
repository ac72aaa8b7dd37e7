import { type Static, Type } from 'typebox'
import { Brace, Fitting, PlacedHole } from './fittings.ts'
import { oneOf } from './one-of.ts'
import { lossQ, quantity } from './quantity.ts'
import { ref, share } from './shared.ts'

const side = (description: string) =>
  quantity('mm', description, { minimum: 5, maximum: 5000, examples: [120] })

export const Sides = share(
  'Sides',
  Type.Object(
    { widthMm: side('Width'), heightMm: side('Height'), depthMm: side('Depth, front to back') },
    { additionalProperties: false, description: 'Width, height and depth' },
  ),
)
export type Sides = Static<typeof Sides>

const shareOf = (description: string) => Type.Number({ description, minimum: 0.05, maximum: 20 })

export const Proportions = share(
  'Proportions',
  Type.Object(
    { width: shareOf('Width share'), height: shareOf('Height share'), depth: shareOf('Depth share') },
    { additionalProperties: false, description: 'Outer width : height : depth, in any scale' },
  ),
)

export const Box = share(
  'Box',
  Type.Object(
    {
      kind: oneOf(['closed', 'vented', 'passive-radiator'], 'How the back of the cone is loaded'),
      outer: Type.Optional(ref(Sides)),
      inner: Type.Optional(ref(Sides)),
      netVolumeL: Type.Optional(
        quantity('L', 'Free air inside, after drivers and tubes; give this, outer or inner', {
          minimum: 0.02,
          maximum: 1000,
          examples: [2.5],
        }),
      ),
      proportions: Type.Optional(ref(Proportions)),
      panelThicknessMm: Type.Optional(
        quantity('mm', 'Thickness of the board', { minimum: 1, maximum: 100, examples: [12] }),
      ),
      joint: Type.Optional(oneOf(['butt', 'mitre', 'rebate'], 'How the panels meet; butt when left out')),
      runsThrough: Type.Optional(
        oneOf(
          ['front-back', 'sides', 'top-bottom'],
          'Which pair of panels covers the edges of the others; front-back for butt joints when left out, sides for mitred and rebated ones',
        ),
      ),
      rebateDepthMm: Type.Optional(
        quantity('mm', 'Depth of a rebate; half the board when left out', { minimum: 0.5, maximum: 90 }),
      ),
      grain: Type.Optional(
        oneOf(
          ['any', 'upright', 'level'],
          'How the grain of front, back and sides runs; with upright and level that of top and bottom runs from left to right; any when left out',
        ),
      ),
      lining: Type.Optional(
        oneOf(['none', 'walls', 'filled'], 'Damping material inside; none when left out'),
      ),
      electronicsL: Type.Optional(
        quantity('L', 'Air that amplifier and leads take up inside', { minimum: 0, maximum: 100 }),
      ),
      braceL: Type.Optional(
        quantity('L', 'Air that braces take up inside, where they are not described', {
          minimum: 0,
          maximum: 100,
        }),
      ),
      braces: Type.Optional(Type.Array(ref(Brace), { description: 'Boards across the inside', maxItems: 8 })),
      fittings: Type.Optional(
        Type.Array(ref(Fitting), {
          description: 'Switch, sockets, terminals, amplifier board; the same in every box of the set',
          maxItems: 20,
        }),
      ),
      holes: Type.Optional(
        Type.Array(ref(PlacedHole), {
          description: 'Holes that are not to be placed automatically',
          maxItems: 40,
        }),
      ),
      airLoad: Type.Optional(
        Type.Boolean({
          description:
            'true adds the air that moves with the cone in its baffle and box to the moving mass, which holds the free-air load only; false when left out',
        }),
      ),
      leakageQ: Type.Optional(lossQ('Leakage loss QL at the box resonance')),
      absorptionQ: Type.Optional(lossQ('Absorption loss QA at the box resonance')),
      portQ: Type.Optional(lossQ('Port friction loss QP at the box resonance')),
    },
    { additionalProperties: false, description: 'The box: give netVolumeL, outer or inner sides' },
  ),
)
export type Box = Static<typeof Box>
