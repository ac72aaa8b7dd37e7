import type { MeasuredResult } from '../../schema/driver-measurement-sections.ts'
import { spread } from '../driver/relations.ts'
import type { Conversion } from './figures.ts'
import { type DriverSweeps, firstResistance, handQ } from './fit-start.ts'
import { peaksOf } from './peak.ts'

/**
 * Moving mass from two resonances, g: m/((fs/fm)² − 1).
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 383 (June 1972), from memory.
 */
export const massFromShift = (massG: number, fsHz: number, fmHz: number): number =>
  massG / ((fsHz / fmHz) ** 2 - 1)

/**
 * Compliance volume from a closed test box, L: Vt (fct Qect/(fs Qes) − 1), whatever the mass does.
 * Source: R. H. Small, J. Audio Eng. Soc. 20, 798 (Dec 1972), from memory; L. L. Beranek and T. Mellow 2012, eq. 7.65.
 */
export const volumeFromBox = (
  volumeL: number,
  free: { fsHz: number; qes: number },
  boxed: { fctHz: number; qect: number },
): number => volumeL * ((boxed.fctHz * boxed.qect) / (free.fsHz * free.qes) - 1)

const METHOD =
  'Highest point and the two frequencies at the root of Re times it, R. H. Small, J. Audio Eng. Soc. 20 (June 1972), from memory'

/** The hand formulas on the same sweeps; null without a peak. */
export function secondOpinion(
  sweeps: DriverSweeps,
  leadOhm: number,
  meterOhm: number | null,
  conversion: Conversion,
): MeasuredResult['secondOpinion'] {
  const re = firstResistance(sweeps.freeAir, leadOhm, meterOhm)
  const [peak] = peaksOf(sweeps.freeAir, re + leadOhm)
  if (peak === undefined) return null
  // Q from one flank is a start for a fit, not an opinion.
  const whole = peak.lowerHz !== null && peak.upperHz !== null
  const { qms, qes } = handQ({ ...peak, maximumOhm: peak.maximumOhm - leadOhm }, re)
  const free = { fsHz: peak.fHz, qes }
  return {
    method: METHOD,
    fsHz: peak.fHz,
    maximumOhm: peak.maximumOhm,
    lowerHz: peak.lowerHz,
    upperHz: peak.upperHz,
    qms: whole ? qms : null,
    qes: whole ? qes : null,
    qts: whole ? (qms * qes) / (qms + qes) : null,
    vasL: positive(
      fromBox(sweeps, re, leadOhm, conversion, free) ?? fromMass(sweeps, re, leadOhm, conversion, free),
    ),
  }
}

const positive = (value: number | null): number | null =>
  value !== null && Number.isFinite(value) && value > 0 ? value : null

type Free = { fsHz: number; qes: number }

function fromBox(sweeps: DriverSweeps, re: number, leadOhm: number, conversion: Conversion, free: Free) {
  if (sweeps.inBox === null || conversion.volumeL === null) return null
  const [peak] = peaksOf(sweeps.inBox, re + leadOhm)
  if (peak === undefined) return null
  const boxed = handQ({ ...peak, maximumOhm: peak.maximumOhm - leadOhm }, re)
  return volumeFromBox(conversion.volumeL, free, { fctHz: peak.fHz, qect: boxed.qes })
}

function fromMass(sweeps: DriverSweeps, re: number, leadOhm: number, conversion: Conversion, free: Free) {
  const { massG, sdCm2 } = conversion
  if (sweeps.withMass === null || massG === null || sdCm2 === null) return null
  const [peak] = peaksOf(sweeps.withMass, re + leadOhm)
  if (peak === undefined || peak.fHz >= free.fsHz) return null
  return spread({ fsHz: free.fsHz, sdCm2, mmsG: massFromShift(massG, free.fsHz, peak.fHz) }).vasL ?? null
}
