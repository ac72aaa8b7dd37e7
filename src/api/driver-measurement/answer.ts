import { significant } from '../../core/say.ts'
import type { DriverMeasurementSections, MeasuredResult } from '../../schema/driver-measurement-sections.ts'

const SAID = ['fsHz', 'qts', 'vasL', 'reOhm'] as const
const NAMES = { fsHz: 'resonance', qts: 'total Q', vasL: 'Vas', reOhm: 'resistance' } satisfies Record<
  (typeof SAID)[number],
  string
>

/** Nobody measures a loudspeaker to a thousandth, whatever the readings say. */
const FINEST_PERCENT = 0.1

const uncertainty = (percent: number): string =>
  percent < FINEST_PERCENT ? `less than ${FINEST_PERCENT} %` : `${significant(percent, 2)} %`

function figuresText({ id, figures }: MeasuredResult): string {
  const parts = SAID.flatMap((name) => {
    const row = figures.find(({ figure }) => figure === name)
    if (row === undefined) return []
    const value = `${significant(row.value, 3)} ${row.unit}`.trim()
    return [`${NAMES[name]} ${value} (give or take ${uncertainty(row.uncertaintyPercent)})`]
  })
  return `${id}: ${parts.join(', ')}.`
}

/** The sentences of `/v1/driver-measurement`: the figures of one driver, the pairs of several, or how to begin. */
export function driverMeasurementAnswer({ measured, pairs, plan }: DriverMeasurementSections): string {
  const [first] = measured
  const [toDo] = plan
  if (first === undefined)
    return toDo === undefined
      ? 'Nothing was measured.'
      : `Measure ${toDo.id} with ${significant(toDo.resistorOhm, 3)} ohm in series and at most ${significant(toDo.generatorV, 2)} V, at ${toDo.frequencyHz.length} frequencies and then closer about the peak; the steps are in the plan.`
  const chosen = pairs.filter((pair) => pair.chosen)
  if (chosen.length === 0) return measured.map(figuresText).join(' ')
  const together = chosen.map(
    (pair) =>
      `${pair.first} with ${pair.second} (${pair.score <= 1 ? 'a pair' : `${significant(pair.score, 2)} times what is still good`})`,
  )
  return `${measured.length} drivers measured. Best together: ${together.join(', ')}.`
}
