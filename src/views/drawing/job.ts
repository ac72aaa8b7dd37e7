import { type NamedStock, namedStock } from '../../core/shop/board-sections.ts'
import { USUAL_KERF_MM } from '../../core/shop/cut-list-assumptions.ts'
import type { CutListSections, Sheet } from '../../schema/cut-list.ts'
import type { Driver } from '../../schema/driver.ts'
import type { Stock, Workshop } from '../../schema/shop.ts'

/** What of an answer is drawn. */
export type Drawn = Pick<CutListSections, 'panels' | 'sheets' | 'notPlaced' | 'cuts'> & {
  cautions: readonly string[]
}

/** What of the request a drawing tells beside the answer; requests and whole designs fit as they are. */
export interface Job {
  name?: string | undefined
  stock?: readonly Stock[] | undefined
  workshop?: Workshop | undefined
  drivers?: readonly Driver[] | undefined
}

export const titled = (title: string, { name }: Job): string =>
  name === undefined ? title : `${title}: ${name}`

export const kerfOf = ({ workshop }: Job): number => workshop?.kerfMm ?? USUAL_KERF_MM

export const boardOf = ({ stock }: Job, sheet: Pick<Sheet, 'stock'>): NamedStock | undefined =>
  namedStock(stock ?? []).find(({ id }) => id === sheet.stock)
