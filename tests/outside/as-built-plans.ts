import type { Design } from '../../src/schema/design.ts'
import type { Planted } from './as-built-boxes.ts'
import { C, type NetlistCase, RHO } from './loudspeaker-netlist.ts'

/** Invented, as in the other simulator cases. */
const SMALL = { fsHz: 124, qms: 3.2, qes: 0.55, vasL: 0.92, sdCm2: 28, reOhm: 3.4, leMh: 0.06 }
const MIDDLE = { fsHz: 72, qms: 3.8, qes: 0.48, vasL: 6.5, sdCm2: 85, reOhm: 6.4, leMh: 0.4 }

const electric = {
  amplifier: {},
  supply: { kind: 'adapter', voltageV: 12, currentLimitA: 2 },
  air: { speedMPerS: C, densityKgPerM3: RHO },
} as const satisfies Partial<Design>

/** A plan and the same box for the simulator; its losses stand at the box resonance in both. */
export interface PlannedPair {
  design: Design
  netlist: NetlistCase
}

const twoSmall = [{ id: 'main', count: 2, parameters: SMALL }]

export const VENTED_PAIR: PlannedPair = {
  design: {
    ...electric,
    drivers: twoSmall,
    wiring: { parallel: ['main', 'main'] },
    box: { kind: 'vented', netVolumeL: 2.5, lining: 'none', leakageQ: 8, absorptionQ: 40, portQ: 60 },
    port: { innerDiameterMm: 26, tuningHz: 105, model: 'lumped' },
  },
  netlist: {
    id: 'two in parallel in a vented box',
    driver: SMALL,
    count: 2,
    wiring: 'parallel',
    sourceOhm: 0,
    netVolumeL: 2.5,
    lossAtHz: 105,
    leakageQ: 8,
    absorptionQ: 40,
    vent: { kind: 'plug', tuningHz: 105, areaCm2: 5.31, portQ: 60 },
  },
}

/** End lengths as in the netlists of pipes: 0.8488 radii flanged, 0.6133 free. */
export const TUBE_BOX: PlannedPair = {
  design: {
    ...electric,
    drivers: [{ id: 'main', parameters: MIDDLE }],
    box: { kind: 'vented', netVolumeL: 9, lining: 'none', leakageQ: 10, absorptionQ: null, portQ: null },
    port: { innerDiameterMm: 44, lengthMm: 80 },
  },
  netlist: {
    id: 'one driver with a tube',
    driver: MIDDLE,
    count: 1,
    wiring: 'parallel',
    sourceOhm: 0,
    netVolumeL: 9,
    lossAtHz: 65,
    leakageQ: 10,
    absorptionQ: null,
    vent: {
      kind: 'pipe',
      lengthMm: 80,
      diameterMm: 44,
      outerEndMm: 0.4244 * 44,
      innerEndMm: 0.30665 * 44,
    },
  },
}

export const CLOSED_BOX: PlannedPair = {
  design: {
    ...electric,
    drivers: [{ id: 'main', parameters: MIDDLE }],
    box: { kind: 'closed', netVolumeL: 6, lining: 'none', leakageQ: 20, absorptionQ: 40 },
  },
  netlist: {
    id: 'closed',
    driver: MIDDLE,
    count: 1,
    wiring: 'parallel',
    sourceOhm: 0,
    netVolumeL: 6,
    // fc = fs √(1 + Vas/Vb)
    lossAtHz: 72 * Math.sqrt(1 + 6.5 / 6),
    leakageQ: 20,
    absorptionQ: 40,
    vent: null,
  },
}

export const RADIATOR_BOX: PlannedPair = {
  design: {
    ...electric,
    drivers: [{ id: 'main', parameters: MIDDLE }],
    box: { kind: 'passive-radiator', netVolumeL: 7, lining: 'none', leakageQ: 10, absorptionQ: 50 },
    passiveRadiator: { fsHz: 45, qms: 8, vasL: 12, sdCm2: 130, addedMassG: 5 },
  },
  netlist: {
    id: 'passive radiator',
    driver: MIDDLE,
    count: 1,
    wiring: 'parallel',
    sourceOhm: 0,
    netVolumeL: 7,
    lossAtHz: 65,
    leakageQ: 10,
    absorptionQ: 50,
    vent: { kind: 'radiator', fsHz: 45, qms: 8, vasL: 12, sdCm2: 130, addedMassG: 5 },
  },
}

export const SERIES_PAIR: PlannedPair = {
  design: { ...VENTED_PAIR.design, wiring: { series: ['main', 'main'] } },
  netlist: { ...VENTED_PAIR.netlist, wiring: 'series' },
}

/** A finished box with one thing wrong on purpose. */
export interface PlantedCase {
  name: string
  /** The finding that must come first. */
  cause: string
  plan: PlannedPair
  built: NetlistCase
  planted: Planted | null
}

const { netlist } = VENTED_PAIR
const plug = (tuningHz: number) => ({ kind: 'plug', tuningHz, areaCm2: 5.31, portQ: 60 }) as const
const pipe = (lengthMm: number) => ({
  ...TUBE_BOX.netlist,
  vent: { kind: 'pipe', lengthMm, diameterMm: 44, outerEndMm: 18.7, innerEndMm: 13.5 } as const,
})
const fromVented = (
  name: string,
  cause: string,
  built: Partial<NetlistCase>,
  planted: Planted | null = null,
) => ({
  name,
  cause,
  plan: VENTED_PAIR,
  built: { ...netlist, ...built },
  planted,
})

export const PLANTED_CASES: PlantedCase[] = [
  fromVented('all fine', 'as-built-as-planned', {}),
  fromVented('a leak', 'as-built-leak', { leakageQ: 3 }),
  // The same port on less air tunes higher by the root of the ratio.
  fromVented('a fifth of the volume missing', 'as-built-volume-small', {
    netVolumeL: 2,
    lossAtHz: 105 / Math.sqrt(0.8),
    vent: plug(105 / Math.sqrt(0.8)),
  }),
  fromVented('dense lining', 'as-built-lining-dense', {
    netVolumeL: 2.5 * 1.12,
    lossAtHz: 105 / Math.sqrt(1.12),
    absorptionQ: 5,
    vent: plug(105 / Math.sqrt(1.12)),
  }),
  fromVented('a driver open', 'as-built-driver-open', {}, { kind: 'open', driver: 1 }),
  fromVented('a driver backwards', 'as-built-driver-reversed', {}, { kind: 'reversed', driver: 0 }),
  fromVented('half an ohm of lead', 'as-built-resistance-high', { sourceOhm: 0.5 }),
  fromVented('the port blocked', 'as-built-port-blocked', { vent: null, lossAtHz: 163 }),
  fromVented('series for parallel', 'as-built-joined-other-way', { wiring: 'series' }),
  {
    name: 'a driver of a series pair shorted',
    cause: 'as-built-driver-shorted',
    plan: SERIES_PAIR,
    built: SERIES_PAIR.netlist,
    planted: { kind: 'shorted', driver: 0, between: ['amp', 's1'] },
  },
  {
    name: 'a driver of a series pair backwards',
    cause: 'as-built-driver-reversed',
    plan: SERIES_PAIR,
    built: SERIES_PAIR.netlist,
    planted: { kind: 'reversed', driver: 1 },
  },
  { name: 'a tube 15 % long', cause: 'as-built-tube-long', plan: TUBE_BOX, built: pipe(92), planted: null },
  { name: 'a tube 15 % short', cause: 'as-built-tube-short', plan: TUBE_BOX, built: pipe(68), planted: null },
  { name: 'a tube as planned', cause: 'as-built-as-planned', plan: TUBE_BOX, built: pipe(80), planted: null },
  {
    name: 'a closed box with a leak',
    cause: 'as-built-leak',
    plan: CLOSED_BOX,
    built: { ...CLOSED_BOX.netlist, leakageQ: 4 },
    planted: null,
  },
  {
    name: 'a closed box a fifth too small',
    cause: 'as-built-volume-small',
    plan: CLOSED_BOX,
    built: { ...CLOSED_BOX.netlist, netVolumeL: 4.8 },
    planted: null,
  },
  {
    name: 'a radiator with 10 g too much',
    cause: 'as-built-radiator-heavy',
    plan: RADIATOR_BOX,
    built: {
      ...RADIATOR_BOX.netlist,
      vent: { kind: 'radiator', fsHz: 45, qms: 8, vasL: 12, sdCm2: 130, addedMassG: 15 },
    },
    planted: null,
  },
  {
    name: 'a radiator as planned',
    cause: 'as-built-as-planned',
    plan: RADIATOR_BOX,
    built: RADIATOR_BOX.netlist,
    planted: null,
  },
]
