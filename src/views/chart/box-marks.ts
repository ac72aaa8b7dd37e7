import { hertz } from '../../core/say.ts'
import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import type { Mark } from './plot.ts'

/** The resonance of the box, whichever kind it is. */
export function resonanceMarks({ fbHz, fcHz }: BoxTuningSections['tuning']): Mark[] {
  const tuning = fbHz === undefined ? [] : [{ hz: fbHz, text: `tuning fb ${hertz(fbHz)}` }]
  const resonance = fcHz === undefined ? [] : [{ hz: fcHz, text: `resonance fc ${hertz(fcHz)}` }]
  return [...tuning, ...resonance]
}

/** Where the band begins that counts for excursion, air speed and level. */
export const bandMark = ({ bandFromHz }: BoxTuningSections['limits']): Mark => ({
  hz: bandFromHz,
  text: `band from ${hertz(bandFromHz)}`,
})
