/** How many times smaller a thing is drawn: steps close enough that little paper is left bare. */
const SMALLER = [
  1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5, 6, 7, 8, 9, 10, 12, 14, 16, 18, 20, 25, 30, 35, 40, 50, 60, 80, 100, 150,
  200, 300, 500,
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
