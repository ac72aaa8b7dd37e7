import type { LoadImpedanceSections } from '../../schema/load-impedance.ts'
import type { Wiring } from '../../schema/wiring.ts'
import type { Formula } from '../working.ts'
import { LOWEST_SHARE_OF_RATED } from './rated-impedance.ts'

const KIRCHHOFF = "Kirchhoff's laws"
const EIGHTY_PERCENT = 'IEC 60268-5:2003, 16.1 (80 % rule), from memory'

/** The printed working of the load: the meter reading where the wiring is plain, and the 80 % rule. */
export function loadWorking(
  load: LoadImpedanceSections['load'],
  wiring: Wiring,
  resistances: ReadonlyMap<string, number>,
): Formula[] {
  return [
    ...meterWorking(wiring, resistances),
    ...(load.allowedMinimumOhm === null
      ? []
      : [
          {
            quantity: 'lowest impedance the amplifier allows',
            formula: `${LOWEST_SHARE_OF_RATED} * Rmin`,
            with: { Rmin: load.allowedMinimumOhm / LOWEST_SHARE_OF_RATED },
            unit: 'ohm',
            source: EIGHTY_PERCENT,
          },
        ]),
    {
      quantity: 'highest rated impedance that this minimum permits',
      formula: `Zmin / ${LOWEST_SHARE_OF_RATED}`,
      with: { Zmin: load.minimumOhm },
      unit: 'ohm',
      source: EIGHTY_PERCENT,
    },
  ]
}

/** Drivers all in series or all in parallel: the sum that a maker can do in the head. */
function meterWorking(wiring: Wiring, resistances: ReadonlyMap<string, number>): Formula[] {
  const branches =
    typeof wiring === 'string'
      ? [wiring]
      : 'series' in wiring
        ? wiring.series
        : 'parallel' in wiring
          ? wiring.parallel
          : []
  const values = branches.flatMap((branch) =>
    typeof branch === 'string' ? (resistances.get(branch) ?? []) : [],
  )
  if (values.length === 0 || values.length !== branches.length) return []
  const names = values.map((_, index) => `R${index + 1}`)
  const isParallel = typeof wiring !== 'string' && 'parallel' in wiring
  return [
    {
      quantity: 'resistance of the drivers on a meter, without the lead',
      formula: isParallel ? `1 / (${names.map((name) => `1/${name}`).join(' + ')})` : names.join(' + '),
      with: Object.fromEntries(values.map((value, index) => [`R${index + 1}`, value])),
      unit: 'ohm',
      source: KIRCHHOFF,
    },
  ]
}
