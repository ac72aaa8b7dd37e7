import { type Static, Type } from 'typebox'
import { Box } from './box.ts'
import { Driver } from './driver.ts'
import { oneOf } from './one-of.ts'
import { Panel } from './panel.ts'
import { PassiveRadiator, Port } from './port.ts'
import { Signal, Supply } from './power.ts'
import { outputOf, quantity } from './quantity.ts'
import { ref, share } from './shared.ts'
import { Part, Stock, Workshop } from './shop.ts'

export const CutListRequest = share(
  'CutListRequest',
  Type.Object(
    {
      box: Type.Optional(ref(Box)),
      boxes: Type.Optional(
        Type.Integer({ description: 'Identical boxes in the set; 1 when left out', minimum: 1, maximum: 16 }),
      ),
      drivers: Type.Optional(
        Type.Array(ref(Driver), { description: 'Kinds of driver in each box', maxItems: 8 }),
      ),
      port: Type.Optional(ref(Port)),
      passiveRadiator: Type.Optional(ref(PassiveRadiator)),
      signal: Type.Optional(ref(Signal)),
      supply: Type.Optional(ref(Supply)),
      parts: Type.Optional(
        Type.Array(ref(Part), {
          description: 'Plain parts of any other project; give these or a box',
          minItems: 1,
          maxItems: 200,
        }),
      ),
      stock: Type.Array(ref(Stock), { description: 'Boards on hand', maxItems: 50 }),
      workshop: Type.Optional(ref(Workshop)),
      effort: Type.Optional(
        Type.Object(
          {
            seconds: Type.Optional(
              quantity('s', 'About how long to look for a layout with less waste; 0 when left out', {
                minimum: 0,
                maximum: 30,
              }),
            ),
          },
          { additionalProperties: false, description: 'How hard to search' },
        ),
      ),
    },
    {
      additionalProperties: false,
      description: 'A box with what goes into it, or plain parts, and the boards to cut them from',
    },
  ),
)
export type CutListRequest = Static<typeof CutListRequest>

const count = (description: string) => Type.Integer({ description, minimum: 0 })

const Rectangle = {
  xMm: outputOf('mm', 'Corner along the length of the board, from its untrimmed corner'),
  yMm: outputOf('mm', 'Corner along the width of the board, from its untrimmed corner'),
  lengthMm: outputOf('mm', 'Size along the length of the board'),
  widthMm: outputOf('mm', 'Size along the width of the board'),
}

const SheetPart = share(
  'SheetPart',
  Type.Object(
    {
      id: Type.String({ description: 'Name of the panel or part' }),
      xMm: Rectangle.xMm,
      yMm: Rectangle.yMm,
      lengthMm: outputOf('mm', "The part's own length"),
      widthMm: outputOf('mm', "The part's own width"),
      turned: Type.Boolean({ description: 'true when its length lies along the width of the board' }),
    },
    { additionalProperties: false, description: 'A part on a board' },
  ),
)

const Offcut = share(
  'Offcut',
  Type.Object(Rectangle, { additionalProperties: false, description: 'A rectangle of wood left over' }),
)
export type Offcut = Static<typeof Offcut>

const Sheet = share(
  'Sheet',
  Type.Object(
    {
      stock: Type.String({ description: 'Name of the board' }),
      index: count('Which board of that name, from 1'),
      lengthMm: outputOf('mm', 'Length of the untrimmed board'),
      widthMm: outputOf('mm', 'Width of the untrimmed board'),
      parts: Type.Array(ref(SheetPart), { description: 'Parts on it' }),
      offcuts: Type.Array(ref(Offcut), { description: 'What is left, at least 20 mm both ways' }),
    },
    { additionalProperties: false, description: 'A board with its parts' },
  ),
)
export type Sheet = Static<typeof Sheet>

const BoardSize = share(
  'BoardSize',
  Type.Object(
    { lengthMm: outputOf('mm', 'Length'), widthMm: outputOf('mm', 'Width') },
    { additionalProperties: false, description: 'Length and width' },
  ),
)

const NotPlaced = share(
  'NotPlaced',
  Type.Object(
    {
      id: Type.String({ description: 'Name of the panel or part' }),
      count: count('How many found no board'),
      smallestBoardMm: ref(BoardSize),
    },
    {
      additionalProperties: false,
      description:
        'Parts that do not fit, and the smallest further board, trim included, that takes those alike',
    },
  ),
)
export type NotPlaced = Static<typeof NotPlaced>

const Cut = share(
  'Cut',
  Type.Object(
    {
      sheet: count('Which of the sheets, from 0'),
      step: count('Number of the cut on that sheet, from 1'),
      direction: oneOf(
        ['along', 'across'],
        'along: the saw runs with the length of the board; across: it runs with its width',
      ),
      atMm: outputOf('mm', 'Near side of the kerf from the untrimmed corner: y for along, x for across'),
      piece: ref(Offcut),
      trim: Type.Boolean({ description: 'true for the cuts that take the edge of the board off' }),
      leaves: Type.Array(Type.String(), { description: 'Parts that have their final size after this cut' }),
    },
    { additionalProperties: false, description: 'One cut, from edge to edge of the piece at hand' },
  ),
)
export type Cut = Static<typeof Cut>

const EdgingPlan = share(
  'EdgingPlan',
  Type.Object(
    {
      stripEachMm: outputOf('mm', 'Width of each strip after slitting'),
      bandLengthMm: outputOf('mm', 'Length of all bands, overhang included'),
      stripToBuyMm: outputOf('mm', 'Length of strip to buy, 5% for waste included'),
      edges: count('Edges to band'),
    },
    { additionalProperties: false, description: 'Edge banding' },
  ),
)

const Hardware = share(
  'Hardware',
  Type.Object(
    {
      item: Type.String({ description: 'What to have at hand' }),
      count: Type.Number({ description: 'How many, or how much of the unit' }),
      unit: Type.Optional(Type.String({ description: 'Unit of the count, when it is not pieces' })),
      note: Type.String({ description: 'What it is for' }),
    },
    { additionalProperties: false, description: 'Hardware for the whole set' },
  ),
)
export type Hardware = Static<typeof Hardware>

/** The sections of the answer of `/v1/cut-list`. */
export const cutListSections = {
  panels: Type.Array(ref(Panel), { description: 'What to cut, for the whole set' }),
  sheets: Type.Array(ref(Sheet), { description: 'Where to cut it from' }),
  notPlaced: Type.Array(ref(NotPlaced), { description: 'What the boards on hand do not yield' }),
  bound: Type.Unsafe<number | null>({
    type: ['integer', 'null'],
    description: 'Fewest boards any layout could need; null when a part fits no board at all',
  }),
  cuts: Type.Array(ref(Cut), { description: 'Cuts in sawing order, sheet by sheet' }),
  edging: Type.Unsafe<Static<typeof EdgingPlan> | null>({
    anyOf: [{ $ref: 'EdgingPlan#' }, { type: 'null' }],
    description: 'Edge banding; null when none is wanted',
  }),
  hardware: Type.Array(ref(Hardware), { description: 'Screws, glue and the like' }),
  usedAreaM2: Type.Number({ description: 'Area of the placed parts, m2' }),
  stockAreaM2: Type.Number({ description: 'Area of the boards they come from, m2' }),
  largestOffcut: Type.Unsafe<Static<typeof BoardSize> | null>({
    anyOf: [{ $ref: 'BoardSize#' }, { type: 'null' }],
    description: 'The largest offcut of the boards used; null when none is 20 mm both ways',
  }),
}

export interface CutListSections {
  panels: Panel[]
  sheets: Sheet[]
  notPlaced: NotPlaced[]
  bound: number | null
  cuts: Cut[]
  edging: Static<typeof EdgingPlan> | null
  hardware: Hardware[]
  usedAreaM2: number
  stockAreaM2: number
  largestOffcut: Static<typeof BoardSize> | null
}
