import type { Fault } from '../outcome.ts'
import { hertz, ohm, significant } from '../say.ts'
import type { DriverFit } from './fit-driver.ts'
import { type DriverSweeps, firstResistance } from './fit-start.ts'
import { type Peak, peaksOf } from './peak.ts'
import type { MeasuredSweep } from './sweep.ts'

/** Readings this far from every driver are not of one. Common practice, no source. */
const NO_DRIVER = 0.2
/** A mass lowers, a box raises the resonance by more than this, or the way is useless. Common practice, no source. */
const LEAST_SHIFT = 1.01
/** A curve that varies by less is that of a resistor. Common practice, no source. */
const FLAT = 1.1
/** The least rated impedance that a driver can have here. */
const LOWEST_PEAK_OHM = 0.5
/** More readings than this share are no slips. Common practice, no source. */
const MOST_SLIPS = 0.1

const PLACES = { freeAir: 'freeAir', withMass: 'withMass/sweep', inBox: 'inBox/sweep' } as const

/** A lead is part of every reading, so that none can be as low as the lead alone; a few may be slips all the same. */
export function leadFaults({ freeAir, withMass, inBox }: DriverSweeps, leadOhm: number, at: string): Fault[] {
  const all = [freeAir, withMass, inBox].flatMap((sweep) => (sweep === null ? [] : [...sweep.ohm]))
  return all.filter((value) => value <= leadOhm).length <= MOST_SLIPS * all.length
    ? []
    : [
        {
          at: `${at}/leadOhm`,
          message: `is ${ohm(leadOhm)}, and the lowest reading is ${ohm(Math.min(...all))}, lead included; give the resistance of lead and clips alone`,
        },
      ]
}

/** Sweeps whose peak is lower than the resistance of any driver: a slip of the unit, or a short. */
export function dwarfFaults(sweeps: DriverSweeps, at: string): Fault[] {
  return (Object.keys(PLACES) as (keyof DriverSweeps)[]).flatMap((name) => {
    const highest = Math.max(...(sweeps[name]?.ohm ?? [Number.POSITIVE_INFINITY]))
    return highest >= LOWEST_PEAK_OHM
      ? []
      : [
          {
            at: `${at}/${PLACES[name]}`,
            message: `never rises above ${ohm(highest)}, and the peak of every driver does; give the impedances in ohm (0.008 kohm is 8 ohm), and see that the leads do not touch`,
          },
        ]
  })
}

/** Sweeps without a peak that has both flanks, and shifts the wrong way. */
export function peakFaults(
  sweeps: DriverSweeps,
  leadOhm: number,
  meterOhm: number | null,
  at: string,
): Fault[] {
  const re = firstResistance(sweeps.freeAir, leadOhm, meterOhm) + leadOhm
  const first = (sweep: MeasuredSweep | null): Peak | undefined =>
    sweep === null ? undefined : peaksOf(sweep, re)[0]
  const missing = (Object.keys(PLACES) as (keyof DriverSweeps)[]).flatMap((name) => {
    const sweep = sweeps[name]
    return sweep === null || first(sweep) !== undefined
      ? []
      : [{ at: `${at}/${PLACES[name]}`, message: missesPeak(sweep) }]
  })
  if (missing.length > 0) return missing
  const [free, mass, box] = [first(sweeps.freeAir), first(sweeps.withMass), first(sweeps.inBox)]
  if (free === undefined) return []
  const shifts = [
    mass !== undefined && mass.fHz * LEAST_SHIFT > free.fHz
      ? {
          at: `${at}/withMass/sweep`,
          message: `peaks at ${hertz(mass.fHz)}, not below the ${hertz(free.fHz)} of free air, as a mass on the cone must; are the sweeps exchanged, did the mass fall off, or is it too small to tell?`,
        }
      : null,
    box !== undefined && box.fHz < free.fHz * LEAST_SHIFT
      ? {
          at: `${at}/inBox/sweep`,
          message: `peaks at ${hertz(box.fHz)}, not above the ${hertz(free.fHz)} of free air, as on a tight box it must; are the sweeps exchanged, does the box leak, or is it too large to tell?`,
        }
      : null,
  ]
  return shifts.filter((fault) => fault !== null)
}

function missesPeak({ frequencyHz, ohm }: MeasuredSweep): string {
  const top = ohm.indexOf(Math.max(...ohm))
  const last = ohm.length - 1
  const [from, to] = [frequencyHz[0]!, frequencyHz[last]!]
  const range = `the sweep from ${hertz(from)} to ${hertz(to)} misses the peak of the resonance`
  if (ohm[top]! < FLAT * Math.min(...ohm))
    return `${range}: the impedance hardly changes, as that of a resistor; is the driver connected, are these the readings of the driver, and does the sweep reach its resonance?`
  if (top <= 1)
    return `${range}: it falls all the way; go on below ${hertz(from)}, until the impedance falls again`
  if (top >= last - 1)
    return `${range}: it rises to the end; go on above ${hertz(to)}, until the impedance falls again, or look below ${hertz(from)}`
  return `${range}: nothing stands out by more than a tenth; measure closer steps, see that the cone moves freely, and that the resistor is not across the driver`
}

const SOUGHT_TEXT: Partial<Record<string, string>> = {
  qms: 'the height of the peak',
  qes: 'the height of the peak',
  fs: 'the resonance',
  re: 'the resistance',
  mass: 'the shift by the mass',
  massQms: 'the height of the peak with the mass',
  stiffness: 'the shift by the box',
  boxMass: 'the height of the peak on the box',
  boxQms: 'the height of the peak on the box',
}

/** Fits from which no figure is to be taken. */
export function fitFaults(fit: DriverFit, at: string): Fault[] {
  const faults: Fault[] = []
  if (fit.misfit > NO_DRIVER)
    faults.push({
      at: `${at}/freeAir`,
      message: `no driver has this curve: the nearest is still ${significant(100 * fit.misfit, 2)} % off on average; measure one driver alone, in free air, and check columns and units`,
    })
  const open = [...new Set(fit.atBounds.map((name) => SOUGHT_TEXT[name] ?? name))]
  if (open.length > 0 || !fit.converged)
    faults.push({
      at: `${at}/freeAir`,
      message: `the readings do not settle ${open.join(' and ') || 'what the driver is'}; take ten more about the peak, five each side, with less noise`,
    })
  return faults
}
