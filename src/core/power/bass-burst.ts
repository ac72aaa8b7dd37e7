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

const CYCLES = 6
const STEPS_A_CYCLE = 400

/**
 * Lowest voltage at the board in a burst of six cycles, V, with all channels in phase.
 * @returns null when the voltage collapses: the draw is constant power, and source and capacitor cannot give it
 * Source: derived; node equation solved step by step. Each step takes the capacitor as a battery behind a resistance
 * (backward Euler), which stays stable for a capacitor of any size and for no resistance of its own.
 */
export function lowestBurstVoltageV(burst: Burst): number | null {
  if (burst.sourceResistanceOhm < NEGLIGIBLE_OHM) return burst.supplyVoltageV
  const step = 1 / (burst.toneHz * STEPS_A_CYCLE)
  const sourceConductance = 1 / burst.sourceResistanceOhm
  const capacitance = burst.reservoirUf * 1e-6
  const branchConductance = capacitance === 0 ? 0 : 1 / (burst.capacitorEsrOhm + step / capacitance)
  const conductance = sourceConductance + branchConductance
  const sourceCurrent = burst.supplyVoltageV * sourceConductance
  let capacitorV = burst.supplyVoltageV
  let lowestV = burst.supplyVoltageV
  for (let i = 1; i <= CYCLES * STEPS_A_CYCLE; i++) {
    const tonePower = 2 * burst.averagePowerDrawnW * Math.sin((2 * Math.PI * i) / STEPS_A_CYCLE) ** 2
    const power = burst.steadyPowerW + tonePower
    // conductance V² − current V + power = 0: what flows in at the node is what the board draws.
    const current = sourceCurrent + branchConductance * capacitorV
    const root = current * current - 4 * conductance * power
    if (root < 0) return null
    const boardV = (current + Math.sqrt(root)) / (2 * conductance)
    if (capacitance > 0) capacitorV += (branchConductance * (boardV - capacitorV) * step) / capacitance
    if (boardV < lowestV) lowestV = boardV
  }
  return lowestV
}
