/** A point, mm; x to the right and y upwards from the lower left corner. */
export interface Point {
  xMm: number
  yMm: number
}

/** An upright rectangle from its lower left corner, mm. */
export interface Rectangle extends Point {
  lengthMm: number
  widthMm: number
}

/** What a line stands for; how it looks is decided where it is drawn. */
export type LineRole =
  /** Edge of a board or of a panel. */
  | 'outline'
  /** Edge of a hole. */
  | 'hole'
  /** Centre marks and circles that holes lie on. */
  | 'centre'
  /** Dimension lines, leaders, rules of a table. */
  | 'dimension'
  /** Fine lines that fill an offcut or waste. */
  | 'hatch'
  /** A face that covers what lies behind it. */
  | 'face'
  /** What the saw turns into dust. */
  | 'kerf'
  /** An edge that gets a band. */
  | 'band'
  /** Bare paper under a label. */
  | 'paper'
  /** A part of a small map that is meant. */
  | 'shade'
  /** Where to cut, fold or glue paper. */
  | 'guide'
  /** Marks that are measured or laid on each other. */
  | 'mark'

export type TextRole = 'text' | 'heading'
export type Anchor = 'start' | 'middle' | 'end'

export interface Segments {
  kind: 'segments'
  role: LineRole
  segments: readonly (readonly [Point, Point])[]
}

export interface Polygon {
  kind: 'polygon'
  role: LineRole
  points: readonly Point[]
}

export interface Circle {
  kind: 'circle'
  role: LineRole
  at: Point
  radiusMm: number
}

/** Type on its base line; turned counter-clockwise. */
export interface Text {
  kind: 'text'
  role: TextRole
  at: Point
  text: string
  /** Size of the type, its em. */
  sizeMm: number
  anchor: Anchor
  angleDeg: 0 | 90
}

export type Shape = Segments | Polygon | Circle | Text

/** Shapes that are drawn together, and the window they are seen through. */
export interface Layer {
  shapes: readonly Shape[]
  window?: Rectangle
}

/** One picture or page: what it shows in words, its size, and the layers in the order they cover each other. */
export interface Drawing {
  title: string
  says: string
  widthMm: number
  heightMm: number
  layers: readonly Layer[]
}
