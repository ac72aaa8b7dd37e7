import type { MeasuredResult } from '../../schema/driver-measurement-sections.ts'
import { say, significant } from '../say.ts'
import type { FigureRow, Source } from './figures.ts'
import type { DriverFit } from './fit-driver.ts'
import { peakBand, settings } from './peak-band.ts'
import { freeAirOf } from './unknowns.ts'

type Next = MeasuredResult['next'][number]

/** What a piece of advice is made from. */
interface Bench {
  row: FigureRow
  fit: DriverFit
  massG: number | null
  volumeL: number | null
  mmsG: number
  meterOhm: number | null
}

/** Surer than this a figure need not be: drivers change by as much with the weather. Common practice, no source. */
const GOOD_PERCENT = 2
/** Readings that one more round about a peak adds. */
const MORE_READINGS = 15
/** What the added-mass way comes to with care; a resistance by a meter. Common practice, no source. */
const MASS_WAY_PERCENT = 8
const METER_PERCENT = 2
const BOX_WAY_PERCENT = 6
const MOST_ADVICE = 4

function morePoints({ row, fit }: Bench): Next {
  const { lowerHz, upperHz } = peakBand(freeAirOf(fit.sought))
  const free = fit.parts.find(({ sweep }) => sweep === 'freeAir')
  const there =
    free?.measured.frequencyHz.filter((hz) => hz >= 0.8 * lowerHz && hz <= 1.25 * upperHz).length ?? 0
  return {
    do: `Take ${MORE_READINGS} more readings about the peak, and add them to the sweep.`,
    shrinks: row.figure,
    nowPercent: row.uncertaintyPercent,
    thenPercent:
      row.uncertaintyPercent * Math.sqrt(Math.max(1, there) / (Math.max(1, there) + MORE_READINGS)),
    frequencyHz: settings(0.85 * lowerHz, 1.18 * upperHz, MORE_READINGS),
  }
}

const without = (frequency: number[] = []) => ({ frequencyHz: frequency })

/** A shift of the resonance is read the better, the larger it is: dVas/Vas goes with 1 + Mms/m. Derived from Small 1972. */
function largerShift(bench: Bench): Next {
  const { row, fit, massG, volumeL, mmsG } = bench
  const { mass, stiffness } = fit.sought
  if (massG !== null && mass < 0.5)
    return {
      do: `Measure again with a larger mass, about ${say(mmsG, 'g', 2)}.`,
      shrinks: row.figure,
      nowPercent: row.uncertaintyPercent,
      thenPercent: (row.uncertaintyPercent * 2) / (1 + 1 / mass),
      ...without(),
    }
  if (massG === null && volumeL !== null && stiffness < 0.7)
    return {
      do: `Measure again on a smaller box, about ${say(volumeL * stiffness, 'L', 2)}.`,
      shrinks: row.figure,
      nowPercent: row.uncertaintyPercent,
      thenPercent: (row.uncertaintyPercent * 2) / (1 + 1 / stiffness),
      ...without(),
    }
  return morePoints(bench)
}

const share = ({ row }: Bench, left: number): number =>
  row.uncertaintyPercent * Math.sqrt(Math.max(0, 1 - row.mainSourceShare * (1 - left * left)))

const ADVICE = {
  readings: (bench) => (bench.row.figure === 'vasL' ? largerShift(bench) : morePoints(bench)),
  'added-mass': (bench) => ({
    do: 'Weigh the added mass again on a finer scale, or use coins whose mass is known.',
    shrinks: bench.row.figure,
    nowPercent: bench.row.uncertaintyPercent,
    thenPercent: share(bench, 0.5),
    ...without(),
  }),
  'test-volume': (bench) => ({
    do: 'Find the volume of the test box by filling it with rice or water from a measuring jug; count the cone and take off the driver.',
    shrinks: bench.row.figure,
    nowPercent: bench.row.uncertaintyPercent,
    thenPercent: share(bench, 0.4),
    ...without(),
  }),
  'cone-area': (bench) => ({
    do: 'Measure once more on a tight closed box of known volume: the compliance then does not depend on the cone area.',
    shrinks: bench.row.figure,
    nowPercent: bench.row.uncertaintyPercent,
    thenPercent: BOX_WAY_PERCENT,
    ...without(),
  }),
  'assumed-mass': (bench) => ({
    do: `Measure a second sweep with a known mass on the cone, about ${say(bench.mmsG, 'g', 2)} of putty or coins.`,
    shrinks: bench.row.figure,
    nowPercent: bench.row.uncertaintyPercent,
    thenPercent: MASS_WAY_PERCENT,
    ...without(),
  }),
  dimensions: (bench) => morePoints(bench),
} satisfies Record<Source, (bench: Bench) => Next>

function meterAdvice(row: FigureRow | undefined, meterOhm: number | null): Next[] {
  if (row === undefined || meterOhm !== null || row.uncertaintyPercent < 2 * METER_PERCENT) return []
  return [
    {
      do: `Read the direct-current resistance with a meter, leads taken off; the sweep says ${significant(row.from, 3)} to ${significant(row.to, 3)} ohm.`,
      shrinks: row.figure,
      nowPercent: row.uncertaintyPercent,
      thenPercent: METER_PERCENT,
      ...without(),
    },
  ]
}

/** What to measure next, the least sure figure first; nothing where all are as sure as a driver is steady. */
export function nextOf(figures: readonly FigureRow[], bench: Omit<Bench, 'row'>): Next[] {
  const rows = (['vasL', 'qts', 'fsHz'] as const).flatMap((name) =>
    figures.filter((row) => row.figure === name),
  )
  const advice = rows
    .filter((row) => row.uncertaintyPercent > GOOD_PERCENT)
    .map((row) => ADVICE[row.mainSource]({ ...bench, row }))
  const all = [
    ...advice,
    ...meterAdvice(
      figures.find(({ figure }) => figure === 'reOhm'),
      bench.meterOhm,
    ),
  ]
  return all
    .filter(
      (row, i) => row.thenPercent < row.nowPercent && all.findIndex((other) => other.do === row.do) === i,
    )
    .sort((a, b) => b.nowPercent - a.nowPercent)
    .slice(0, MOST_ADVICE)
}
