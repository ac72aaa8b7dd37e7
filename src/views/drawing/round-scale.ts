/** How many times smaller a thing is drawn; steps that a rule and a head can undo. */
const SMALLER = [
  1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100, 125, 150, 200, 250, 300, 400,
  500,
]

/** The smallest round reduction that makes a thing fit a room. */
export const roundScale = (
  thing: { lengthMm: number; widthMm: number },
  room: { lengthMm: number; widthMm: number },
): number => {
  const needed = Math.max(thing.lengthMm / room.lengthMm, thing.widthMm / room.widthMm)
  return SMALLER.find((times) => times >= needed) ?? Math.ceil(needed)
}

export const scaleSaid = (times: number): string => `scale 1:${times}`
