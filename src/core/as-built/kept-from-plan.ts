import type { Assumption } from '../../schema/frame.ts'
import type { PlannedBox } from './planned-box.ts'

const kept = (value: number | null, unit: string, why: string): Assumption => ({
  at: '/measured/sweep',
  value,
  unit,
  why,
})

/** Mixed trees and crossovers are fitted as they were planned; no fault of a single driver is sought in them. */
const wiringKept = ({ joint, driven }: PlannedBox): Assumption[] =>
  joint === null && driven > 1
    ? [
        {
          at: '/design/wiring',
          value: 'as planned',
          unit: '',
          why: 'a driver that is open, shorted or backwards is only sought where all drivers are in parallel or all in series',
        },
      ]
    : []

/** What no impedance curve of the terminals can tell, so that it stays as in the plan. */
export const keptFromPlan = (planned: PlannedBox): Assumption[] => [
  ...figuresKept(planned),
  ...wiringKept(planned),
]

function figuresKept({ speaker }: PlannedBox): Assumption[] {
  const { driver, opening, losses } = speaker
  const mass = kept(
    driver.mmsG,
    'g',
    'moving mass of the driver: the curve tells stiffness against mass only, so the mass is taken from its data',
  )
  if (opening === null)
    return [
      mass,
      kept(
        driver.fsHz,
        'Hz',
        'free-air resonance of the driver: one peak does not tell its suspension from the air of the box',
      ),
      kept(
        driver.qms,
        '',
        'Qms of the driver: one peak does not tell its friction from absorption in the box',
      ),
    ]
  const hidden = 'the curve does not tell it from friction in the driver, leak and absorption'
  return [
    mass,
    opening.kind === 'radiator'
      ? kept(opening.radiator.qms, '', `Qms of the passive radiator: ${hidden}`)
      : kept(losses.portQ, '', `friction QP in the port beyond that of its wall: ${hidden}`),
  ]
}
