import type { Supply } from '../../schema/power.ts'
import type { PowerBudgetSections } from '../../schema/power-budget.ts'
import { lowestBurstVoltageV } from './bass-burst.ts'
import type { BudgetInput } from './budget-input.ts'
import { NEGLIGIBLE_OHM } from './cable.ts'
import {
  ATTACH_CURRENT_A,
  droopV,
  holdUpMs,
  inrush,
  leastRatingOnV,
  portDipV,
  rippleSharing,
  softStartMs,
} from './reservoir.ts'

type ReservoirSection = NonNullable<PowerBudgetSections['reservoir']>

/** Resistance of an electrolytic capacitor itself, ohm. Common practice, no source. */
export const USUAL_ESR_OHM = 0.03
/** The note a bass burst is judged at, Hz, and a quarter of its cycle, ms. */
const BURST_HZ = 50
const QUARTER_CYCLE_MS = 5
/** Below a nanofarad it is no reservoir. */
const LEAST_RESERVOIR_UF = 1e-3

/** Capacity of the reservoir, uF; 0 when there is none worth the name. */
export const reservoirUfOf = ({ reservoirUf = 0 }: Supply): number =>
  reservoirUf >= LEAST_RESERVOIR_UF ? reservoirUf : 0

/** What the reservoir does and what it does to the source; null without one. */
export function reservoirSection(
  { source, cableOhm }: BudgetInput,
  supply: Supply,
  { sineA, idleA }: Pick<PowerBudgetSections['supply'], 'sineA' | 'idleA'>,
): ReservoirSection | null {
  const reservoirUf = reservoirUfOf(supply)
  if (reservoirUf === 0) return null
  const { voltageV, highestVoltageV } = source
  const { reservoirEsrOhm = USUAL_ESR_OHM, inrushLimiterOhm = 0 } = supply
  const attach = inrush(reservoirUf, cableOhm + reservoirEsrOhm + inrushLimiterOhm, highestVoltageV)
  const sharing = cableOhm < NEGLIGIBLE_OHM ? null : rippleSharing(cableOhm, reservoirUf, BURST_HZ)
  const burst = {
    supplyVoltageV: voltageV,
    sourceResistanceOhm: cableOhm,
    capacitorEsrOhm: reservoirEsrOhm,
    steadyPowerW: idleA * voltageV,
    averagePowerDrawnW: (sineA - idleA) * voltageV,
    toneHz: BURST_HZ,
  }
  return {
    droopV: droopV(reservoirUf, sineA, QUARTER_CYCLE_MS),
    holdUpMs: holdUpMs(reservoirUf, voltageV, 0.9 * voltageV, sineA * voltageV),
    lowestBurstV: lowestBurstVoltageV({ ...burst, reservoirUf }),
    lowestBurstWithoutV: lowestBurstVoltageV({ ...burst, reservoirUf: 0 }),
    helpsAboveHz: sharing?.toneCornerHz ?? null,
    sourceShareOfRipple: sharing?.sourceShareOfRipple ?? null,
    attachPeakA: attach.peakCurrentA,
    attachChargeMc: attach.chargeMc,
    chargeAbove100MaMc: attach.chargeAbove100mAMc,
    timesOverAttachLimit: attach.timesOverAttachCharge,
    lawfulLimiterOhm: highestVoltageV / ATTACH_CURRENT_A,
    softStartMs: softStartMs(reservoirUf, highestVoltageV),
    portDipV: portDipV(reservoirUf, voltageV),
    ratingMarginV:
      supply.reservoirRatingV === undefined ? null : supply.reservoirRatingV - source.highestVoltageV,
    leastRatingV: leastRatingOnV(source),
  }
}
