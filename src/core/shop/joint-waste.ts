import type { Panel } from '../../schema/panel.ts'
import type { Carcass } from './joint-panels.ts'

/**
 * Wood that the joints of a box take off one of its four kinds of panel, named by their role, mm3, against a block of its finished length, width and
 * thickness. A mitred edge loses a triangle, so half a board thickness of its width; where two mitres meet at a corner
 * they share a pyramid, which counts once. A rebate loses its depth times the board that lies in it. Geometry; derived
 * by integrating the panel over its thickness: summed over a box it is outer less inner volume.
 */
export function jointWasteMm3(carcass: Carcass, panel: Pick<Panel, 'id' | 'lengthMm' | 'widthMm'>): number {
  const { joint, thicknessMm: t, rebateDepthMm, runsThrough } = carcass
  const { id, lengthMm, widthMm } = panel
  const isBaffle = id === 'front' || id === 'back'
  if (joint === 'mitre') {
    const round = runsThrough === 'front-back'
    if (isBaffle && !round) return 0
    const ends = t * t * widthMm
    return round ? ends + t * t * lengthMm - (4 / 3) * t ** 3 : ends
  }
  const rebated = runsThrough === 'sides' ? 'side' : 'top-bottom'
  return joint === 'rebate' && id === rebated ? 2 * rebateDepthMm * t * widthMm : 0
}
