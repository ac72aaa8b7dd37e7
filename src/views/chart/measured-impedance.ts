import { hertz, say } from '../../core/say.ts'
import type { AsBuiltSections } from '../../schema/as-built.ts'
import type { MeasuredResult } from '../../schema/driver-measurement-sections.ts'
import { axisAround } from './linear-axis.ts'
import type { Curve } from './panel.ts'
import { plot } from './plot.ts'

/** Free-air readings of the first driver beside the curve fitted to them; null where none was measured. */
export function measuredDriverPicture([driver]: readonly MeasuredResult[]): string | null {
  const free = driver?.curves.find(({ sweep }) => sweep === 'free-air')
  if (driver === undefined || free === undefined) return null
  const { fsHz, qts } = driver.parameters
  return plot({
    id: 'measured',
    title: `Impedance of driver ${driver.id} in free air`,
    says: [
      `The readings lie ${say(driver.fit.misfitPercent, '%', 2)} from the fitted curve; it resonates at ${hertz(fsHz ?? 0)} with a total Q of ${say(qts ?? 0, '')}.`,
      ...driver.outliers
        .slice(0, 1)
        .map(
          () =>
            `${driver.outliers.length} of ${driver.fit.readings + driver.outliers.length} readings were left out.`,
        ),
    ],
    frequencyHz: free.frequencyHz,
    marks: fsHz === undefined ? [] : [{ hz: fsHz, text: `fs ${hertz(fsHz)}` }],
    panels: [
      panelOf([
        { values: free.measuredOhm, text: 'measured', look: 'second' },
        { values: free.fittedOhm, text: 'fitted', look: 'first' },
      ]),
    ],
  })
}

/** A reading so many times the highest of the plan would press all curves flat on the axis. */
const BEYOND_THE_PLAN = 8

/** The measured box, what the fit makes of it, and the plan. */
export function asBuiltPicture({ impedance, built }: Pick<AsBuiltSections, 'impedance' | 'built'>): string {
  const { frequencyHz, measuredOhm, fittedOhm, plannedOhm } = impedance
  const highest = BEYOND_THE_PLAN * Math.max(...plannedOhm)
  const drawnOhm = measuredOhm.map((ohm) => (ohm <= highest ? ohm : null))
  const left = drawnOhm.filter((ohm) => ohm === null).length
  const said =
    built === null
      ? 'No box explains the readings; the plan is drawn beside them.'
      : 'The readings, the box that explains them, and the plan.'
  return plot({
    id: 'as-built',
    title: 'Impedance of the finished box',
    says: [left === 0 ? said : `${said} Far above, and not drawn: ${left} of the readings.`],
    frequencyHz,
    marks: [],
    panels: [
      panelOf([
        { values: drawnOhm, text: 'measured', look: 'second' },
        { values: plannedOhm, text: 'planned', look: 'third' },
        ...(fittedOhm.length === 0 ? [] : [{ values: fittedOhm, text: 'as found', look: 'first' as const }]),
      ]),
    ],
  })
}

const panelOf = (curves: Curve[]) => ({
  axisTitle: 'Impedance (ohm)',
  axis: axisAround([0, ...curves.flatMap(({ values }) => [...values])]),
  height: 260,
  curves,
})
