import type { AsBuiltSections } from '../../schema/as-built.ts'
import { endsTotalMm } from '../box/port-geometry.ts'
import { closedQtc } from '../box/tuning.ts'
import { asPlanned, builtCircuit } from './built-circuit.ts'
import type { Deviation, Deviations } from './deviations.ts'
import { type Estimated, estimated } from './estimated.ts'
import type { StoryFit } from './fit-story.ts'
import type { PlannedBox } from './planned-box.ts'
import { storiesOf } from './stories.ts'
import { terminalMeterOhm } from './terminals.ts'

type Built = AsBuiltSections['built']
type Estimate = NonNullable<Built['tuningHz']>

/** A figure of the box: how it follows from the deviations, and whether the curve tells it. */
export interface FigureRow {
  name: Exclude<keyof Built, 'box' | 'state' | 'lossesToldApart' | 'misfitPercent'>
  unit: string
  /** `loss` figures are worked out as 1/Q and turned over; `scale` figures are above 0. */
  kind: 'scale' | 'plain' | 'loss'
  /** How far off is still good, percent; null for losses. */
  tolerancePercent: ((planned: PlannedBox) => number) | null
  known: (planned: PlannedBox, fit: StoryFit) => boolean
  of: (planned: PlannedBox, fit: StoryFit, built: Deviations) => number
}

const seeks = (name: Deviation) => (_: PlannedBox, fit: StoryFit) => fit.story.free.includes(name)
const isOpen = ({ speaker }: PlannedBox, { story }: StoryFit): boolean =>
  speaker.opening !== null && !story.blocked
const tuningOf: FigureRow['of'] = ({ speaker }, { story }, built) =>
  builtCircuit(speaker, built, story.blocked).boxHz

/** Total Q at the terminals; resistance in series beyond the plan counts with the coil. */
const qtcOf: FigureRow['of'] = ({ speaker }, { story }, built) => {
  const { boxHz, circuit } = builtCircuit(speaker, built, story.blocked)
  const { fsHz, qms, qes } = speaker.driver
  const fs = fsHz * Math.exp(-built.suspension / 2)
  const qe = (qes * (fs / fsHz) * (1 + built.series)) / Math.exp(built.motor)
  const qm = (qms * (fs / fsHz)) / Math.exp(built.friction)
  const alpha = (boxHz / fs) ** 2 - 1
  const w = 2 * Math.PI * boxHz * (circuit.boxM3PerPa ?? 1)
  const q = (loss: number) => (loss === 0 ? null : 1 / loss)
  return closedQtc((qe * qm) / (qe + qm), alpha, {
    leakageQ: q(circuit.leakOhm === null ? 0 : 1 / (w * circuit.leakOhm)),
    absorptionQ: q(w * circuit.absorptionOhm),
    portQ: null,
    liningGain: 1,
  })
}

/** Effective length that tunes the built volume to the built tuning, mm: as 1/(fb² V). Helmholtz resonance. */
const effectiveMm = ({ enclosure }: PlannedBox, built: Deviations): number =>
  (enclosure.port?.effectiveLengthMm ?? 0) / Math.exp(2 * built.tuning + built.air)

const endsMm = ({ enclosure }: PlannedBox): number =>
  enclosure.port === null ? 0 : endsTotalMm(enclosure.port.geometry)

const portLoss = ({ speaker }: PlannedBox): number =>
  speaker.opening?.kind === 'port' && speaker.losses.portQ !== null ? 1 / speaker.losses.portQ : 0

/** How far a box may be off and still count as built to plan. Common practice, no source. */
export const FIGURES: readonly FigureRow[] = [
  {
    name: 'tuningHz',
    unit: 'Hz',
    kind: 'scale',
    tolerancePercent: () => 3,
    known: (planned, fit) => isOpen(planned, fit) && seeks('tuning')(planned, fit),
    of: tuningOf,
  },
  {
    name: 'resonanceHz',
    unit: 'Hz',
    kind: 'scale',
    tolerancePercent: () => 5,
    known: (planned, fit) => !isOpen(planned, fit) && seeks('air')(planned, fit),
    of: tuningOf,
  },
  {
    name: 'qtc',
    unit: '',
    kind: 'scale',
    tolerancePercent: () => 12,
    known: (planned, fit) => !isOpen(planned, fit) && seeks('air')(planned, fit),
    of: qtcOf,
  },
  {
    name: 'effectiveVolumeL',
    unit: 'L',
    kind: 'scale',
    tolerancePercent: () => 10,
    known: seeks('air'),
    of: ({ speaker }, _, built) => speaker.acousticVolumeL * Math.exp(built.air),
  },
  {
    name: 'tubeLengthMm',
    unit: 'mm',
    kind: 'plain',
    // Six percent of the whole moving air, ends included, is three percent of tuning.
    tolerancePercent: ({ enclosure }) =>
      (6 * (enclosure.port?.effectiveLengthMm ?? 0)) / (enclosure.port?.lengthMm ?? 1),
    known: (planned, fit) =>
      isOpen(planned, fit) &&
      seeks('tuning')(planned, fit) &&
      (planned.enclosure.port?.lengthMm ?? null) !== null,
    of: (planned, _, built) => effectiveMm(planned, built) - endsMm(planned),
  },
  {
    name: 'leakageQ',
    unit: '',
    kind: 'loss',
    tolerancePercent: null,
    known: seeks('leak'),
    of: (_, __, built) => built.leak,
  },
  {
    name: 'absorptionQ',
    unit: '',
    kind: 'loss',
    tolerancePercent: null,
    known: seeks('absorption'),
    of: (_, __, built) => built.absorption,
  },
  {
    name: 'lossQ',
    unit: '',
    kind: 'loss',
    tolerancePercent: null,
    known: seeks('leak'),
    of: (planned, fit, built) =>
      built.leak + built.absorption + (isOpen(planned, fit) ? portLoss(planned) : 0),
  },
  {
    name: 'meterOhm',
    unit: 'ohm',
    kind: 'plain',
    tolerancePercent: () => 8,
    known: ({ meterOhm }) => meterOhm !== null,
    of: (planned, { story }, built) => terminalMeterOhm(planned, story, built.series) ?? 0,
  },
  {
    name: 'driverResonanceHz',
    unit: 'Hz',
    kind: 'scale',
    tolerancePercent: () => 12,
    known: seeks('suspension'),
    of: ({ speaker }, _, built) => speaker.driver.fsHz * Math.exp(-built.suspension / 2),
  },
  {
    name: 'driverQms',
    unit: '',
    kind: 'scale',
    tolerancePercent: () => 35,
    known: seeks('friction'),
    of: ({ speaker }, _, built) => speaker.driver.qms * Math.exp(-built.suspension / 2 - built.friction),
  },
  {
    name: 'motorStrengthTm',
    unit: 'T.m',
    kind: 'scale',
    tolerancePercent: () => 8,
    known: () => true,
    of: ({ speaker }, _, built) => speaker.driver.blTm * Math.exp(built.motor / 2),
  },
]

const finiteOrNull = (value: number): number | null => (Number.isFinite(value) ? value : null)

/** Turns a loss 1/Q over: the more loss the lower the Q; no loss, or less than none, has no Q. */
function qOf({ value, from, to }: Estimated): Estimate {
  const q = (loss: number) => (loss > 0 ? finiteOrNull(1 / loss) : null)
  return { value: q(value), from: q(to), to: q(from) }
}

/** A figure of the fitted box with its interval; of losses as 1/Q, of scales as logarithm. */
export function inner(row: FigureRow, planned: PlannedBox, fit: StoryFit): Estimated {
  return estimated(fit, (built) => {
    const value = row.of(planned, fit, built)
    return row.kind === 'scale' ? Math.log(value) : value
  })
}

/** The same turned into the figure that a maker knows. */
export function outer(row: FigureRow, { value, from, to }: Estimated): Estimate {
  if (row.kind === 'loss') return qOf({ value, from, to })
  const plain = (x: number) => finiteOrNull(row.kind === 'scale' ? Math.exp(x) : x)
  return { value: plain(value), from: plain(from), to: plain(to) }
}

/** A figure of the plan, of losses as 1/Q; null where the plan has no such figure: the fc of a vented box. */
export function plannedFigure(row: FigureRow, planned: PlannedBox, fit: StoryFit): number | null {
  const asMeant = { ...fit, story: storiesOf(planned)[0] }
  return row.known(planned, asMeant) ? row.of(planned, asMeant, asPlanned(planned.speaker)) : null
}
