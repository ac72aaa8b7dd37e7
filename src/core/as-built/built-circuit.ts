import type { Circuit } from '../box/circuit.ts'
import { boxCompliance } from '../box/losses.ts'
import { type Loudspeaker, radiatorAcoustics } from '../box/loudspeaker.ts'
import type { LumpedVent, TubeVent, Vent } from '../box/vent.ts'
import type { Deviations } from './deviations.ts'

/** A planned box with some deviations, as a circuit with the figures that a maker knows it by. */
export interface BuiltCircuit {
  circuit: Circuit
  /** fb with an opening, fc without, Hz. */
  boxHz: number
  acousticVolumeL: number
}

/** A tube that tunes the box to w (rad/s): longer or shorter than planned, its ends as planned unless they alone are too much. */
function builtTube(vent: TubeVent, circuit: Circuit, w: number, box: number): TubeVent {
  const effectiveM = vent.areaM2 / (circuit.air.densityKgPerM3 * w * w * box)
  const endsM = vent.outerEndM + vent.innerEndM
  const ends = Math.min(1, effectiveM / endsM)
  return {
    ...vent,
    lengthM: Math.max(0, effectiveM - endsM),
    outerEndM: vent.outerEndM * ends,
    innerEndM: vent.innerEndM * ends,
  }
}

function builtPlug(vent: LumpedVent, w: number, box: number): LumpedVent {
  const stiffness = 1 / box + (vent.complianceM3PerPa === null ? 0 : 1 / vent.complianceM3PerPa)
  return { ...vent, massKgPerM4: stiffness / (w * w) }
}

function builtVent(circuit: Circuit, w: number, box: number): Vent | null {
  const { vent } = circuit
  if (vent === null) return null
  return vent.kind === 'tube' ? builtTube(vent, circuit, w, box) : builtPlug(vent, w, box)
}

/**
 * The circuit of a box that departs from its plan. Moving mass and friction in the opening stay as planned.
 * @param blocked  true closes the opening: the box is then a closed one
 * Source: the circuit of box/circuit.ts; fc = fs √(1 + α), R. H. Small, J. Audio Eng. Soc. 20 (1972), from memory.
 */
export function builtCircuit(planned: Loudspeaker, built: Deviations, blocked: boolean): BuiltCircuit {
  const { circuit } = planned
  const acousticVolumeL = planned.acousticVolumeL * Math.exp(built.air)
  const box = boxCompliance(acousticVolumeL, planned.air)
  const cms = circuit.cmsMPerN * Math.exp(built.suspension)
  const open = circuit.vent !== null && !blocked
  const stiffness = 1 / cms + (circuit.count * circuit.sdM2 ** 2) / box
  const boxHz = open
    ? planned.boxHz * Math.exp(built.tuning)
    : Math.sqrt(stiffness / circuit.mmsKg) / (2 * Math.PI)
  const w = 2 * Math.PI * boxHz
  return {
    boxHz,
    acousticVolumeL,
    circuit: {
      ...circuit,
      blTm: circuit.blTm * Math.exp(built.motor / 2),
      cmsMPerN: cms,
      rmsKgPerS: circuit.rmsKgPerS * Math.exp(built.friction),
      leH: circuit.leH + (built.coil * circuit.reOhm) / (2 * Math.PI * planned.boxHz),
      boxM3PerPa: box,
      absorptionOhm: built.absorption / (w * box),
      leakOhm: built.leak === 0 ? null : 1 / (built.leak * w * box),
      vent: open ? builtVent(circuit, w, box) : null,
    },
  }
}

/** The deviations of a box built to plan: none, and the losses of the plan. */
export function asPlanned({ losses }: Loudspeaker): Deviations {
  const loss = (q: number | null) => (q === null ? 0 : 1 / q)
  return {
    series: 0,
    motor: 0,
    suspension: 0,
    friction: 0,
    coil: 0,
    air: 0,
    tuning: 0,
    leak: loss(losses.leakageQ),
    absorption: loss(losses.absorptionQ),
  }
}

/** Mass that turns a passive radiator from its plan to `tuningHz` on `boxM3PerPa`, g on each; negative for less. */
export function radiatorMassOffG(planned: Loudspeaker, tuningHz: number, boxM3PerPa: number): number | null {
  if (planned.opening?.kind !== 'radiator') return null
  const { radiator } = planned.opening
  const { mass, compliance } = radiatorAcoustics(radiator)
  const w = 2 * Math.PI * tuningHz
  const off = (1 / boxM3PerPa + 1 / compliance) / (w * w) - mass
  return 1000 * off * (radiator.count ?? 1) * (radiator.sdCm2 * 1e-4) ** 2
}
