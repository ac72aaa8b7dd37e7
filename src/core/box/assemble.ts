import type { Air } from '../../schema/air.ts'
import type { Box } from '../../schema/box.ts'
import type { Space } from '../../schema/design.ts'
import type { DriverParameters } from '../../schema/driver.ts'
import type { Assumption } from '../../schema/frame.ts'
import type { PassiveRadiator, Port } from '../../schema/port.ts'
import { type AirState, airAssumptions, airOf } from '../air.ts'
import { completeDriver } from '../driver/complete.ts'
import { type Contradiction, contradiction } from '../driver/contradiction.ts'
import type { Fault } from '../outcome.ts'
import { extraMassKg } from './air-load.ts'
import { type BodyInBox, radiatorBodies } from './bodies.ts'
import { type Enclosure, enclosure } from './enclosure.ts'
import { boxLosses, liningGain, wallFrictionQ } from './losses.ts'
import {
  type DriverGroup,
  type Loudspeaker,
  loudspeaker,
  type Opening,
  VISCOSITY_M2_PER_S,
} from './loudspeaker.ts'
import { portAssumptions } from './port-assumptions.ts'
import { portFaults, type TunedPort } from './tuned-port.ts'

/** Everything a loudspeaker is made of, as the request says it. */
export interface BoxInput {
  driver: DriverParameters
  /** Pointer to those parameters in the request. */
  driverAt: string
  group: DriverGroup
  /** Every body in the air of the box, drivers of other kinds included. */
  bodies: readonly BodyInBox[]
  box: Box
  port: Port | undefined
  passiveRadiator: PassiveRadiator | undefined
  sourceResistanceOhm: number
  air: Air | undefined
  space: Space
}

/** A loudspeaker ready to be solved, its enclosure, and what was filled in on the way. */
export interface Assembled {
  speaker: Loudspeaker
  enclosure: Enclosure
  assumptions: Assumption[]
  contradiction: Contradiction | null
}

interface KindRule {
  at: string
  broken: (input: BoxInput) => boolean
  message: string
}

const KIND_RULES: readonly KindRule[] = [
  {
    at: '/port',
    broken: ({ box, port }) => box.kind === 'vented' && port === undefined,
    message: 'a vented box needs a port {innerDiameterMm, and tuningHz or lengthMm}',
  },
  {
    at: '/port',
    broken: ({ box, port }) => box.kind !== 'vented' && port !== undefined,
    message: 'only a vented box has a port; make the kind of the box "vented", or leave the port out',
  },
  {
    at: '/passiveRadiator',
    broken: ({ box, passiveRadiator }) => box.kind === 'passive-radiator' && passiveRadiator === undefined,
    message: 'a passive-radiator box needs passiveRadiator {fsHz, qms, vasL, sdCm2}',
  },
  {
    at: '/passiveRadiator',
    broken: ({ box, passiveRadiator }) => box.kind !== 'passive-radiator' && passiveRadiator !== undefined,
    message:
      'only a box with a passive radiator has one; make the kind of the box "passive-radiator", or leave it out',
  },
  {
    at: '/box/portQ',
    broken: ({ box }) => box.kind !== 'vented' && box.portQ !== undefined && box.portQ !== null,
    message: 'only a vented box has a port with friction; leave portQ out',
  },
  {
    at: '/box/airLoad',
    broken: ({ box }) => box.airLoad === true && box.outer === undefined && box.inner === undefined,
    message: 'the air load needs the outer or inner sides of the box',
  },
  {
    at: '/box/outer',
    broken: ({ box, space }) => space === 'baffle' && box.outer === undefined && box.inner === undefined,
    message: 'the step of the front panel needs the outer sides of the box',
  },
]

function openingOf(input: BoxInput, port: TunedPort | null): Opening {
  if (input.passiveRadiator !== undefined) return { kind: 'radiator', radiator: input.passiveRadiator }
  return port === null ? null : { kind: 'port', port, model: input.port?.model ?? 'tube' }
}

// Friction is part of the pipe model; for a plug of air it becomes a loss of its own.
const frictionQOf = (opening: Opening): number | null =>
  opening?.kind === 'port' && opening.model === 'lumped'
    ? wallFrictionQ(opening.port.geometry.radiusMm * 1e-3, opening.port.tuningHz, VISCOSITY_M2_PER_S)
    : null

/** Air load of each cone when the request asks for it: its share of the wall it sits in, and the depth behind it. */
function airLoadKg(input: BoxInput, { inner }: Enclosure, sdM2: number, air: AirState): number {
  if (input.box.airLoad !== true || inner === null) return 0
  const wallM2 = Math.max(sdM2, (inner.widthMm * inner.heightMm * 1e-6) / input.group.count)
  return extraMassKg({ sdM2, depthM: inner.depthMm * 1e-3, wallM2 }, air.densityKgPerM3)
}

/**
 * Completes the driver, works out the enclosure and puts both together as a circuit.
 * Refuses, with every fault at once, what cannot be put together. Sources: in the files it calls.
 */
export function assemble(input: BoxInput): Assembled | { faults: Fault[] } {
  const completed = completeDriver(input.driver, input.driverAt)
  const air = airOf(input.air)
  const shape: Fault[] = [
    ...KIND_RULES.filter((rule) => rule.broken(input)).map(({ at, message }) => ({ at, message })),
    ...(input.port === undefined ? [] : portFaults(input.port, '/port')),
  ]
  const usablePort = shape.some((fault) => fault.at.startsWith('/port')) ? undefined : input.port
  const bodies = [...input.bodies, ...radiatorBodies(input.passiveRadiator)]
  const enclosed = enclosure(input.box, bodies, usablePort, air, liningGain(input.box))
  const faults = [
    ...('faults' in completed ? completed.faults : []),
    ...shape,
    ...('faults' in enclosed ? enclosed.faults : []),
  ]
  if ('faults' in completed || 'faults' in enclosed || faults.length > 0) return { faults }
  const opening = openingOf(input, enclosed.port)
  const { losses, assumptions } = boxLosses(input.box, frictionQOf(opening))
  return {
    speaker: loudspeaker({
      driver: completed.driver,
      group: input.group,
      netVolumeL: enclosed.netVolumeL,
      losses,
      opening,
      air,
      sourceResistanceOhm: input.sourceResistanceOhm,
      extraMassKg: airLoadKg(input, enclosed, completed.driver.sdCm2 * 1e-4, air),
      solidAngle: input.space === 'half' ? 2 * Math.PI : 4 * Math.PI,
    }),
    enclosure: enclosed,
    assumptions: [
      ...completed.assumptions,
      ...enclosed.assumptions,
      ...(input.port !== undefined && enclosed.port !== null
        ? portAssumptions(input.port, enclosed.port, '/port')
        : []),
      ...assumptions,
      ...airAssumptions(input.air),
    ],
    contradiction: contradiction(input.driver),
  }
}
