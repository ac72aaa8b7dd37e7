import { NEGLIGIBLE_OHM } from './cable.ts'

/** A supply that feeds a class-D board in a bass note. */
export interface Burst {
  supplyVoltageV: number
  /** Source and lead together, ohm (≥ 0). */
  sourceResistanceOhm: number
  /** 0 for no capacitor. */
  reservoirUf: number
  capacitorEsrOhm: number
  /** Power the board draws all the time, W, whatever it plays. */
  steadyPowerW: number
  /** Average power it draws for the note, W; that draw goes as 2 P sin². */
  averagePowerDrawnW: number
  toneHz: number
}

/** Halves of the six cycles, in each of which the draw runs once up and down. */
const HALVES = 12
const STEPS_A_HALF = 200
/** The draw for the note over its peak, step by step through a half. */
const SINE_SQUARED = Float64Array.from(
  { length: STEPS_A_HALF },
  (_, i) => Math.sin((Math.PI * (i + 1)) / STEPS_A_HALF) ** 2,
)

/**
 * Lowest voltage at the board in a burst of six cycles, V, with all channels in phase.
 * @returns null when the voltage collapses: the draw is constant power, and source and capacitor cannot give it
 * Source: derived; node equation solved step by step, then extrapolated from two sizes of step to none (L. F. Richardson,
 * Phil. Trans. A 210, 1911). Each step takes the capacitor as a battery behind a resistance (backward Euler), which stays
 * stable for a capacitor of any size and for no resistance of its own.
 */
export function lowestBurstVoltageV(burst: Burst): number | null {
  const { supplyVoltageV, sourceResistanceOhm, steadyPowerW, averagePowerDrawnW } = burst
  if (sourceResistanceOhm < NEGLIGIBLE_OHM) return supplyVoltageV
  // Without a capacitor nothing carries over from one moment to the next: the lowest is at the peak.
  if (burst.reservoirUf === 0)
    return nodeVoltageV(
      1 / sourceResistanceOhm,
      supplyVoltageV / sourceResistanceOhm,
      steadyPowerW + 2 * averagePowerDrawnW,
    )
  const fineV = lowestOfStepsV(burst, 1)
  const coarseV = lowestOfStepsV(burst, 2)
  return fineV === null || coarseV === null ? fineV : 2 * fineV - coarseV
}

/** The lowest voltage of the steps, each `stride` of the table long; null when it collapses. */
function lowestOfStepsV(burst: Burst, stride: number): number | null {
  const { supplyVoltageV, sourceResistanceOhm, steadyPowerW, averagePowerDrawnW } = burst
  const step = stride / (burst.toneHz * 2 * STEPS_A_HALF)
  const sourceConductance = 1 / sourceResistanceOhm
  const sourceCurrent = supplyVoltageV * sourceConductance
  const capacitance = burst.reservoirUf * 1e-6
  const branchConductance = 1 / (burst.capacitorEsrOhm + step / capacitance)
  const conductance = sourceConductance + branchConductance
  let capacitorV = supplyVoltageV
  let lowestV = supplyVoltageV
  for (let half = 0; half < HALVES; half++) {
    const beforeV = capacitorV
    for (let i = stride - 1; i < STEPS_A_HALF; i += stride) {
      const power = steadyPowerW + 2 * averagePowerDrawnW * SINE_SQUARED[i]!
      const boardV = nodeVoltageV(conductance, sourceCurrent + branchConductance * capacitorV, power)
      if (boardV === null) return null
      capacitorV += (branchConductance * (boardV - capacitorV) * step) / capacitance
      lowestV = Math.min(lowestV, boardV)
    }
    // A half that ends where it began is repeated to the last digit by all that follow.
    if (capacitorV === beforeV) break
  }
  return lowestV
}

/** conductance V² − current V + power = 0: what flows in at the node is what the board draws; null when it cannot. */
function nodeVoltageV(conductance: number, current: number, power: number): number | null {
  const root = current * current - 4 * conductance * power
  return root < 0 ? null : (current + Math.sqrt(root)) / (2 * conductance)
}
