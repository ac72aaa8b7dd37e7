import type { SheetOrder } from './sheet-of.ts'

/** The build sheet on paper, in one piece, so that a thread of its own can be handed it. */
export async function printedSheet(order: SheetOrder): Promise<Uint8Array> {
  // Loaded when a sheet is printed: it would more than double the time that the service takes to start.
  const { paperSheet } = await import('./paper/paper-sheet.ts')
  return paperSheet(order)
}
