import { hertz, ohm } from '../../core/say.ts'
import type { BoxTuningSections } from '../../schema/box-tuning-sections.ts'
import type { LoadImpedanceSections } from '../../schema/load-impedance.ts'
import { type AxisOn, type CurveValue, isNumber } from './axis.ts'
import { resonanceMarks } from './box-marks.ts'
import { axisAround, linearAxis } from './linear-axis.ts'
import { logAxis, positiveDomain, roundDomain } from './log-axis.ts'
import { type Named, titled } from './picture.ts'
import { type Mark, plot } from './plot.ts'

/** Above this ratio of highest to lowest an even axis would press the low part flat. */
const EVEN_UP_TO_RATIO = 20

/** Impedance of one channel in its box, modulus above phase. */
export function channelImpedancePicture(
  { impedance, tuning, curves }: Pick<BoxTuningSections, 'impedance' | 'tuning' | 'curves'>,
  said: Named = {},
): string {
  return impedancePicture({
    title: titled('Impedance of the channel', said),
    curve: { ...curves, phaseDeg: curves.impedancePhaseDeg },
    minimum: { hz: impedance.minimumAtHz, ohm: impedance.minimumOhm },
    allowedMinimumOhm: null,
    marks: resonanceMarks(tuning),
  })
}

/** Impedance of the whole load, modulus above phase, with the least that the amplifier allows. */
export function loadImpedancePicture(
  { load, loadCurve }: Pick<LoadImpedanceSections, 'load' | 'loadCurve'>,
  said: Named = {},
): string {
  return impedancePicture({
    title: titled('Impedance of the load', said),
    curve: loadCurve,
    minimum: { hz: load.minimumAtHz, ohm: load.minimumOhm },
    allowedMinimumOhm: load.allowedMinimumOhm,
    marks: [],
  })
}

interface Shown {
  title: string
  curve: LoadImpedanceSections['loadCurve']
  minimum: { hz: number; ohm: number }
  allowedMinimumOhm: number | null
  marks: readonly Mark[]
}

function impedancePicture({ title, curve, minimum, allowedMinimumOhm, marks }: Shown): string {
  const allowed = allowedMinimumOhm === null ? [] : [allowedMinimumOhm]
  return plot({
    id: 'impedance',
    title,
    says: [
      minimumSaid(minimum, allowedMinimumOhm),
      'The upper field shows the modulus, the lower the phase.',
    ],
    frequencyHz: curve.frequencyHz,
    marks,
    panels: [
      {
        axisTitle: 'Impedance (ohm)',
        axis: modulusAxis([...curve.impedanceOhm, ...allowed]),
        height: 220,
        curves: [{ values: curve.impedanceOhm, look: 'first' }],
        levels: allowed.map((value) => ({ value, text: `least the amplifier allows ${ohm(value)}` })),
        spots: [{ hz: minimum.hz, value: minimum.ohm, text: `lowest ${ohm(minimum.ohm)}` }],
      },
      {
        axisTitle: 'Phase (deg)',
        axis: phaseAxis(curve.phaseDeg),
        height: 110,
        curves: [{ values: curve.phaseDeg, look: 'second' }],
      },
    ],
  })
}

function minimumSaid({ hz, ohm: lowest }: Shown['minimum'], allowed: number | null): string {
  const is = `The impedance is lowest at ${hertz(hz)}, ${ohm(lowest)}`
  if (allowed === null) return `${is}.`
  return lowest < allowed
    ? `${is}: below the ${ohm(allowed)} that the amplifier allows.`
    : `${is}: not below the ${ohm(allowed)} that the amplifier allows.`
}

function modulusAxis(values: readonly CurveValue[]): AxisOn {
  const domain = positiveDomain(values, [1, 100])
  return domain[1] / domain[0] > EVEN_UP_TO_RATIO
    ? logAxis({ domain: roundDomain(domain), mostTicks: 10, prefixFrom: 1000 })
    : axisAround([0, ...values])
}

/** From minus to plus 45, 90 or 180 degrees: a coil above the middle line, a capacitor below. */
function phaseAxis(values: readonly CurveValue[]): AxisOn {
  const farthest = values.filter(isNumber).reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  const end = [45, 90].find((bound) => farthest <= bound) ?? 180
  return linearAxis({ domain: [-end, end], ticks: [-end, -end / 2, 0, end / 2, end] })
}
