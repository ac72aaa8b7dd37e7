import type { Drawing } from './drawing.ts'
import { moved } from './placed.ts'
import { at } from './shapes.ts'

/** Pages one below the other as a single picture. */
export function stacked(pages: readonly Drawing[], title: string): Drawing {
  const [only] = pages
  if (only !== undefined && pages.length === 1) return only
  const heightMm = pages.reduce((sum, page) => sum + page.heightMm, 0)
  let topMm = heightMm
  const layers = pages.flatMap((page) => {
    topMm -= page.heightMm
    return page.layers.map((layer) => moved(layer, at(0, topMm)))
  })
  return {
    title,
    says: pages.map((page) => `${page.title}: ${page.says}`).join(' '),
    widthMm: Math.max(0, ...pages.map(({ widthMm }) => widthMm)),
    heightMm,
    layers,
  }
}
