import type { Verdict } from '../../../schema/frame.ts'
import { heightOfWords, type TextColumn, type Type, write } from './column.ts'
import type { Piece } from './flow.ts'

const PAD_PT = 6

/** The verdict in a frame; what must not be built stands white on black. */
export function verdictPiece({ document, leftPt, topPt }: TextColumn, verdict: Verdict, said: string): Piece {
  const type: Type = { sizePt: 13, bold: true, colour: verdict === 'blocked' ? '#ffffff' : '#000000' }
  const wordsPt = heightOfWords(document, said, 400, type)
  const widthPt = document.widthOfString(said) + 1
  const heightPt = wordsPt + 2 * PAD_PT
  return {
    gapPt: 6,
    heightPt,
    draw: (yPt) => {
      const top = topPt + yPt
      document.lineWidth(1.5).rect(leftPt, top, widthPt + 2 * PAD_PT + 4, heightPt)
      if (verdict === 'blocked') document.fillAndStroke('#000000', '#000000')
      else document.stroke('#000000')
      write(document, said, { xPt: leftPt + PAD_PT + 2, yPt: top + PAD_PT + 1, widthPt: widthPt + 4 }, type)
    },
  }
}
