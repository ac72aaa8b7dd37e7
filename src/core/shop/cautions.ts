/** They repeat common rules; tool manuals, local codes and workshop rules, and licensed practice come first. */
export const SAW_CAUTION =
  'Sawing: wear eye and ear protection, clamp small parts instead of holding them, keep hands behind the blade, unplug before changing it. The manual of the tool and the rules of the workshop come first.'
export const STRIP_CAUTION =
  'A strip narrower than the reach from blade to fence must not be pushed by hand: use a push stick or cut it from the wider piece, and support both sides so that the kerf cannot close on the blade.'
export const DUST_CAUTION =
  'Dust of wood and fibreboard harms the lungs: extraction at the tool, a mask of class FFP2 or N95 or better, sweep wet. Local limits at work come first.'
export const DRILL_CAUTION =
  'Hole saws grab: clamp the panel on scrap, use the side handle and a low speed, eye protection, no gloves. The manual of the drill comes first.'
const GLUE_CAUTION =
  'Hot glue and irons burn deeply: cold water for ten minutes, do not tear glue off the skin, see a doctor. Air the finished box; new boards give off formaldehyde.'
export const KNIFE_CAUTION =
  'Knife: several light strokes along a steel rule, the other hand behind the blade.'
const MAGNET_CAUTION =
  'Magnets pinch fingers and pull screwdrivers into cones; keep them away from cards, watches and pacemakers.'

/** Cautions of the steps that every box takes. */
export const boxCautions = (hasEdging: boolean, hasHoles: boolean): string[] => [
  GLUE_CAUTION,
  ...(hasHoles ? [DRILL_CAUTION, MAGNET_CAUTION] : []),
  ...(hasEdging ? [KNIFE_CAUTION] : []),
]
