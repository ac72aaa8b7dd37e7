import type { FigureRow } from '../measurement/figures.ts'
import type { Measured } from '../measurement/measure-driver.ts'

/** A figure of the measured driver by its name. */
export const figureOf = ({ result }: Measured, name: string): FigureRow | undefined =>
  result.figures.find(({ figure }) => figure === name)

/** Its value; 0 where the sweeps do not give it. */
export const measuredValue = (facts: Measured, name: string): number => figureOf(facts, name)?.value ?? 0
