/** A length as it stands on a drawing: to a tenth, without its unit, which the head of the page names. */
export const figure = (valueMm: number): string => String(Number(valueMm.toFixed(1)))

/** Length by width. */
export const sizeSaid = ({ lengthMm, widthMm }: { lengthMm: number; widthMm: number }): string =>
  `${figure(lengthMm)} × ${figure(widthMm)}`

export const diameterSaid = (diameterMm: number): string => `⌀${figure(diameterMm)}`

export const plural = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`
