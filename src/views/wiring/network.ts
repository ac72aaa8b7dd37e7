import type { Driver } from '../../schema/driver.ts'
import type { Wiring } from '../../schema/wiring.ts'
import { textAround } from '../drawing/shapes.ts'
import { inParallel, inSeries } from './nest.ts'
import { below, type Part } from './part.ts'
import { AROUND, path } from './pens.ts'
import { capacitor, coil, loudspeaker, resistor } from './symbols.ts'

/** A value as it is printed on parts: three digits at most, no noughts behind the point. */
export const valued = (value: number, unit: string): string => `${Number(value.toPrecision(3))} ${unit}`

/** What the drivers are, by their names. */
export type Drivers = Pick<Driver, 'id' | 'count' | 'parameters'>

/** Gives each driver of a box the name it has on the front panel: "main", or "main 1" and on where there are several. */
export type Naming = (id: string) => string

/** Names the drivers of one box in the order they are wired, channel after channel. */
export function namingOf(drivers: readonly Drivers[]): Naming {
  const counted = new Map<string, number>()
  return (id) => {
    const many = (drivers.find((driver) => driver.id === id)?.count ?? 1) > 1
    const index = (counted.get(id) ?? 0) + 1
    counted.set(id, index)
    return many ? `${id} ${index}` : id
  }
}

function impedanceSaid({ parameters }: Drivers): string {
  const { ratedImpedanceOhm, reOhm } = parameters
  if (ratedImpedanceOhm !== undefined) return valued(ratedImpedanceOhm, 'Ω')
  return reOhm === undefined ? '' : `${valued(reOhm, 'Ω')} on a meter`
}

/** The network of one channel, plus at its upper end. */
export function networkOf(wiring: Wiring, drivers: readonly Drivers[], naming: Naming): Part {
  const partOf = (node: Wiring): Part => {
    if (typeof node === 'string') {
      const driver = drivers.find(({ id }) => id === node)
      return loudspeaker(naming(node), driver === undefined ? '' : impedanceSaid(driver))
    }
    if ('series' in node) return inSeries(folded(node.series, node.series.map(partOf)))
    if ('parallel' in node) return inParallel(folded(node.parallel, node.parallel.map(partOf)))
    return componentOf(node)
  }
  return partOf(wiring)
}

type Component = Exclude<Wiring, string | { series: Wiring[] } | { parallel: Wiring[] }>

function componentOf(part: Component): Part {
  if ('resistorOhm' in part) return resistor(valued(part.resistorOhm, 'Ω'))
  if ('capacitorUf' in part) return capacitor(valued(part.capacitorUf, 'µF'))
  const { inductorMh, resistanceOhm } = part
  const resistance =
    resistanceOhm === undefined || resistanceOhm === 0 ? [] : [`${valued(resistanceOhm, 'Ω')} of wire`]
  return coil(valued(inductorMh, 'mH'), ...resistance)
}

/** Most branches drawn one by one where all are alike; of more, the first ones and the last stand for all. */
const MOST_ALIKE = 8
const FIRST_ALIKE = 3

function folded(nodes: readonly Wiring[], parts: readonly Part[]): Part[] {
  const isAlike = nodes.every((node) => JSON.stringify(node) === JSON.stringify(nodes[0]))
  if (!isAlike || nodes.length <= MOST_ALIKE) return [...parts]
  const left = nodes.length - FIRST_ALIKE - 1
  return [...parts.slice(0, FIRST_ALIKE), leftOut(left), ...parts.slice(-1)]
}

const leftOut = (count: number): Part => ({
  leftMm: 11,
  rightMm: 11,
  heightMm: 17,
  drawn: (top) => [
    path(AROUND, [top, below(top, 5)]),
    textAround(below(top, 7), `${count} more,`),
    textAround(below(top, 10.6), 'wired alike'),
    path(AROUND, [below(top, 12.5), below(top, 17)]),
  ],
})
