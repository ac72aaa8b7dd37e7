import type { Answer } from './ask.ts'
import { type Draft, valueAt } from './draft.ts'

/** One figure of the answer at a glance; `state` tells in words too whether it is fine. */
export interface Tile {
  label: string
  value: string
  note: string
  state: 'fine' | 'mind' | 'bad'
}

const figure = (value: number, unit: string, digits = 3): string => {
  const rounded = Number(value.toPrecision(digits))
  return `${Math.abs(rounded) >= 1000 ? Math.round(value) : rounded} ${unit}`
}

/** What a maker looks at first: lowest note, level, what happens at full volume, tube, load, current, boards. */
export function tilesOf(answer: Answer, draft: Draft): Tile[] {
  return [
    lowest(answer),
    loudest(answer),
    travel(answer),
    ...tube(answer),
    load(answer),
    current(answer),
    ...boards(answer, draft),
  ]
}

const lowest = ({ tuning }: Answer): Tile => ({
  label: 'Plays down to',
  value: tuning.f3Hz === null ? 'no even bass' : figure(tuning.f3Hz, 'Hz'),
  note: tuning.f10Hz === null ? 'half the power there' : `gone at ${figure(tuning.f10Hz, 'Hz')}`,
  state: 'fine',
})

function loudest({ loudness, limits }: Answer): Tile {
  const margin = loudness?.marginDb ?? null
  const level = loudness?.programmeDb ?? limits.maximumSplDb
  return {
    label: 'Loudness',
    value: figure(level, 'dB'),
    note:
      margin === null
        ? `on average, at ${loudness?.distanceM ?? 1} m`
        : `${figure(Math.abs(margin), 'dB', 2)} ${margin < 0 ? 'less than wished' : 'in hand'}`,
    state: margin !== null && margin < 0 ? 'mind' : 'fine',
  }
}

function travel({ limits }: Answer): Tile {
  const most = Math.max(limits.excursionMm, limits.excursionBelowBandMm)
  const { xmaxMm } = limits
  return {
    label: 'Cone at full volume',
    value: figure(most, 'mm', 2),
    note: xmaxMm === null ? 'clean travel not known' : `clean up to ${figure(xmaxMm, 'mm', 2)}`,
    state: xmaxMm !== null && most > xmaxMm ? 'mind' : 'fine',
  }
}

function tube({ port }: Answer): Tile[] {
  if (port === null) return []
  return [
    {
      label: 'Tube',
      value: port.lengthMm === null ? 'cannot be' : figure(port.lengthMm, 'mm long'),
      note: `air at ${figure(port.airSpeedMPerS, 'm/s', 2)}, heard above 17`,
      state: port.lengthMm === null ? 'bad' : port.airSpeedMPerS > 17 ? 'mind' : 'fine',
    },
  ]
}

const load = ({ load: { ratedOhm, minimumOhm, allowedMinimumOhm, mayDrive } }: Answer): Tile => ({
  label: 'Load on a channel',
  value: figure(ratedOhm, 'Ω'),
  note: `lowest ${figure(minimumOhm, 'Ω', 2)}${allowedMinimumOhm === null ? '' : `, allowed ${figure(allowedMinimumOhm, 'Ω', 2)}`}`,
  state: mayDrive === false ? 'bad' : 'fine',
})

const current = ({ supply: { programmeA, currentLimitA, marginA } }: Answer): Tile => ({
  label: 'Current at full volume',
  value: figure(programmeA, 'A', 2),
  note: currentLimitA === null ? 'limit of the source not known' : `of ${figure(currentLimitA, 'A', 2)}`,
  state: marginA !== null && marginA < 0 ? 'bad' : 'fine',
})

function boards({ sheets, notPlaced }: Answer, draft: Draft): Tile[] {
  const stock = valueAt(draft, '/stock')
  if (!Array.isArray(stock) || stock.length === 0) return []
  return [
    {
      label: 'Boards',
      value: notPlaced.length > 0 ? 'not enough' : `${sheets.length} needed`,
      note: notPlaced.length > 0 ? `${notPlaced.length} panels find no place` : 'every panel fits',
      state: notPlaced.length > 0 ? 'bad' : 'fine',
    },
  ]
}
