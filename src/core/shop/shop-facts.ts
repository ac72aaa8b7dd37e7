import type { Homeless } from './back.ts'
import type { BraceClash } from './brace-clashes.ts'
import type { Duct } from './duct.ts'
import type { FrontLayout } from './front-layout.ts'
import type { Web } from './hole-gaps.ts'

/** What the rules of the workshop look at; a member is null when the box has no such thing. */
export interface ShopFacts {
  thicknessMm: number
  grossVolumeL: number
  /** Thinnest board that suits the air inside, mm. */
  usualThicknessMm: number
  joint: 'butt' | 'mitre' | 'rebate'
  column: Omit<FrontLayout, 'centres'>
  web: Web | null
  leastWebMm: number
  flange: { gapMm: number; between: [string, string] } | null
  magnet: { at: string; id: string; behindMm: number; depthMm: number } | null
  tube: { insideMm: number; behindMm: number; leastMm: number; sideMm: number; leastSideMm: number } | null
  bodies: { at: string; gapMm: number; between: [string, string] } | null
  /** The driver whose hole leaves least wood to its screws, and the one whose flange covers least, mm. */
  land: { id: string; holeMm: number; landMm: number } | null
  cover: { id: string; coverMm: number } | null
  /** The driver whose hole is sawn too small and filed most, mm all round. */
  filed: { id: string; fileMm: number } | null
  noSaw: string[]
  driverScrew: { lengthMm: number; longestMm: number; flangeMm: number } | null
  /** Distance of the outermost driver screw from an edge and from the corner of a fibreboard front, mm. */
  faceScrew: { edgeMm: number; cornerMm: number } | null
  panelScrew: { diameterMm: number; lengthMm: number; thickestMm: number; wantedMm: number } | null
  /** Glued edges too short for screws, of all glued edges of one box. */
  unscrewed: { edges: number; of: number; shortestMm: number } | null
  /** Edge band: the strip as bought, into how many it is slit, and the width of each, mm; null when no edge is banded. */
  strip: { boughtMm: number; slitsInto: number; eachMm: number } | null
  duct: Duct | null
  /** Every pair of a brace and something it meets. */
  braceClashes: BraceClash[]
  /** The brace that reaches furthest into a wall or past it, and by how much, mm. */
  braceOutside: { at: string; id: string; overMm: number; sideMm: number } | null
  /** Two braces that cross. */
  braceCross: { at: string; ids: [string, string] } | null
  /** Where a brace without a window is described. */
  divider: string | null
  /** What found no place on the back. */
  homeless: Homeless[]
  /** The narrowest wood on the back, and where the request describes what makes it so. */
  backWeb: (Web & { at: string }) | null
  /** Something from the front and something from the back that want the same room, and how much depth is missing. */
  depthClash: { at: string; between: [string, string]; shortMm: number } | null
  /** A hole or a fitting that reaches over the wall behind it, and how far, mm. */
  overWall: { at: string; id: string; overMm: number } | null
  /**
   * The volume control: its bush, the board that its pocket leaves, and how much of its shaft stands out for the
   * knob, mm; null when the length of the shaft is not known.
   */
  control: { bushMm: number; leaveMm: number; knobMm: number | null } | null
  /** The panel that rings lowest, with its free sides, mm. */
  ringing: { id: string; sidesMm: [number, number]; supportedHz: number; clampedHz: number } | null
  /** Where the laminated board of the panels is described. */
  laminate: string | null
  unmeasured: string[]
  radiator: boolean
}

/** What the rules about boards look at. */
export interface BoardFacts {
  /** Whether any board is on hand, and the area of all pieces, m2. */
  hasBoards: boolean
  areaM2: number
  /** Parts that no board takes, even an empty one, with the reason. */
  tooThick: string[]
  tooLarge: string[]
  /** Parts that would fit a board but found none left, and how many pieces. */
  leftOver: { ids: string[]; pieces: number; boards: string[] }
  narrowestMm: number
}
