import type { Curve } from '../../schema/box-tuning.ts'
import type { Tube } from '../../schema/port.ts'

/** At what drive to judge a loudspeaker, and what is wanted from it. */
export interface Judgement {
  voltageV: number
  /** Pointer to that voltage in the request and whether its parent is given; null where the amplifier sets it. */
  drive: { at: string; given: boolean } | null
  /** Lowest note that counts; f3 when null. */
  lowestHz: number | null
  curve: Curve | undefined
  /** What else a box-tuning request asks: other tubes, a wanted Qtc, the spacing of two drivers; null or empty when not. */
  tubes: readonly Tube[]
  wantedQtc: number | null
  spacingMm: number | null
  /** true where the power budget judges the drivers against their ratings. */
  powerJudged: boolean
  /** true where the cut list judges whether tube and box go together, so that it is not said twice. */
  fitJudged: boolean
}
