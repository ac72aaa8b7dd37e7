import type { PaperSize } from '../views/drawing/paper.ts'
import type { ViewOptions } from './view-options.ts'

/** The paper a sheet is laid out for. */
export const paperOf = ({ paper }: ViewOptions): PaperSize => (paper === 'letter' ? 'Letter' : 'A4')
