import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { designCheck } from '../../../src/core/design/design-check.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { Design } from '../../../src/schema/design.ts'
import type { DesignCheckSections } from '../../../src/schema/design-check.ts'
import { airSpeedPicture } from '../../../src/views/chart/air-speed.ts'
import { excursionPicture } from '../../../src/views/chart/excursion.ts'
import { groupDelayPicture } from '../../../src/views/chart/group-delay.ts'
import { channelImpedancePicture, loadImpedancePicture } from '../../../src/views/chart/impedance.ts'
import { responsePicture } from '../../../src/views/chart/response.ts'
import { frameOf, named, piecesOf, readXml } from './read-svg.ts'

const PICTURES = {
  response: responsePicture,
  load: loadImpedancePicture,
  channel: channelImpedancePicture,
  excursion: excursionPicture,
  'air speed': airSpeedPicture,
  'group delay': groupDelayPicture,
}
const DESIGNS = ['shelf-pair', 'closed-desk-box', 'two-way-monitor', 'port-too-long'] as const

const answers = new Map(
  DESIGNS.map((name) => {
    const text = readFileSync(new URL(`../../designs/${name}.json`, import.meta.url), 'utf8')
    const outcome = designCheck(JSON.parse(text) as Design)
    if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
    return [name, outcome.sections] as const
  }),
)

const answerOf = (name: (typeof DESIGNS)[number]): DesignCheckSections => {
  const answer = answers.get(name)
  if (answer === undefined) throw new Error(`no answer for ${name}`)
  return structuredClone(answer)
}

const descOf = (svg: string): string => named(readXml(svg), 'desc')[0]?.text ?? ''
const labelsOf = (svg: string): string[] => named(readXml(svg), 'text', 'label').map(({ text }) => text)

describe.each(DESIGNS)('%s', (design) => {
  it.each(Object.entries(PICTURES))('%s: well formed, named by the maker, the same twice', (_, draw) => {
    const name = `<b onload="x">'Tom & Jerry'</b>`
    const svg = draw(answerOf(design), { name })
    const elements = readXml(svg)
    expect(named(elements, 'b')).toEqual([])
    expect(named(elements, 'title')[0]?.text).toContain(name)
    expect(draw(answerOf(design), { name })).toBe(svg)
  })

  // Half the size a sign is the mean width of a sans-serif face, from memory; not the estimate under test.
  it.each(Object.entries(PICTURES))('%s: no label in a field covers another', (_, draw) => {
    const elements = readXml(draw(answerOf(design), { lowestHz: 105 }))
    const { top } = frameOf(elements)
    const boxes = named(elements, 'text', 'label').map(({ attributes, text }) => ({
      left: Number(attributes['x']),
      width: 0.5 * 12 * text.length,
      baseline: Number(attributes['y']),
    }))
    const inField = boxes.filter(({ baseline }) => baseline > top)
    for (const [index, a] of inField.entries())
      for (const b of inField.slice(index + 1))
        expect(
          Math.abs(a.baseline - b.baseline) >= 12 || a.left + a.width <= b.left || b.left + b.width <= a.left,
        ).toBe(true)
  })
})

it('the response says where it falls by 3 dB, and how far the lowest wanted note is down', () => {
  const answer = answerOf('shelf-pair')
  answer.tuning.f3Hz = 98
  answer.tuning.referenceSplDb = 90
  answer.curves.frequencyHz = [50, 200]
  answer.curves.splDb = [80, 92]
  const desc = descOf(responsePicture(answer, { lowestHz: 100 }))
  expect(desc).toContain('falls 3 dB below its 90.0 dB at 98.0 Hz')
  // 100 Hz is half way between 50 and 200 Hz on a logarithmic axis: 86 dB, 4 below 90.
  expect(desc).toContain('The lowest wanted note, 100 Hz, lies 4.0 dB below that level')
  answer.tuning.f3Hz = null
  expect(descOf(responsePicture(answer))).toContain('stays within 3 dB of 90.0 dB')
})

it('levels that are the highest possible are drawn once and labelled so', () => {
  const answer = answerOf('shelf-pair')
  expect(labelsOf(responsePicture(answer))).toEqual(
    expect.arrayContaining(['at this drive', 'highest possible']),
  )
  answer.curves.maximumSplDb = answer.curves.splDb
  expect(labelsOf(responsePicture(answer))).toContain('at this drive, the highest possible')
})

it.each([
  [3.2, 3.1, 'below the 3.20 ohm'],
  [3.2, 3.2, 'not below the 3.20 ohm'],
])('allowed %d ohm, lowest %d ohm', (allowed, lowest, said) => {
  const answer = answerOf('shelf-pair')
  answer.load.allowedMinimumOhm = allowed
  answer.load.minimumOhm = lowest
  const svg = loadImpedancePicture(answer)
  expect(descOf(svg)).toContain(`${lowest.toFixed(2)} ohm: ${said}`)
  expect(labelsOf(svg)).toContain('least the amplifier allows 3.20 ohm')
})

it('modulus and phase have a field each, phase from minus to plus 90 degrees', () => {
  const answer = answerOf('shelf-pair')
  answer.loadCurve = { frequencyHz: [20, 200, 2000], impedanceOhm: [4, 8, 4], phaseDeg: [0, 60, -60] }
  const elements = readXml(loadImpedancePicture(answer))
  const frame = named(elements, 'rect', 'frame')[1]?.attributes
  const [top, height] = [Number(frame?.['y']), Number(frame?.['height'])]
  const [phase = []] = piecesOf(named(elements, 'path', 'second')[0]?.attributes['d'] ?? '')
  for (const [index, share] of [1 / 2, 1 / 6, 5 / 6].entries())
    expect(phase[index]?.[1]).toBeCloseTo(top + share * height, 1)
})

it.each([
  [2.2, 2.3, 'beyond the 2.2 mm'],
  [2.2, 2.2, 'within the 2.2 mm'],
])('the driver allows %d mm, the cone moves %d mm', (xmaxMm, excursionMm, said) => {
  const answer = answerOf('shelf-pair')
  Object.assign(answer.limits, { xmaxMm, excursionMm })
  const svg = excursionPicture(answer)
  expect(descOf(svg)).toContain(said)
  const line = Number(named(readXml(svg), 'line', 'limit')[0]?.attributes['y1'])
  const { top, bottom } = frameOf(readXml(svg))
  expect(line).toBeGreaterThan(top)
  expect(line).toBeLessThan(bottom)
})

it('a driver without a stated excursion has no limit line', () => {
  const answer = answerOf('shelf-pair')
  answer.limits.xmaxMm = null
  expect(named(readXml(excursionPicture(answer)), 'line', 'limit')).toEqual([])
})

// The limits of the findings on air speed: 10, 17 and 34 m/s.
it.each([
  [8, ['10 m/s'], 'it stays quiet'],
  [12, ['10 m/s', '17 m/s'], 'a square edge may be heard'],
  [20, ['10 m/s', '17 m/s', '34 m/s'], 'plainly audible'],
  [50, ['10 m/s', '17 m/s', '34 m/s'], 'it roars'],
])('air at %d m/s', (speed, lines, said) => {
  const answer = answerOf('shelf-pair')
  if (answer.port !== null) answer.port.airSpeedMPerS = speed
  answer.curves.portAirSpeedMPerS = answer.curves.frequencyHz.map((_, index) => (index === 5 ? speed : 0))
  const svg = airSpeedPicture(answer)
  expect(named(readXml(svg), 'text', 'limit').map(({ text }) => text.split(':')[0])).toEqual(lines)
  expect(descOf(svg)).toContain(said)
})

it('without a port the speed is that of the passive radiator, or there is none', () => {
  const answer = answerOf('closed-desk-box')
  expect(descOf(airSpeedPicture(answer))).toContain('neither a port nor a passive radiator')
  answer.curves.portAirSpeedMPerS = answer.curves.frequencyHz.map(() => 0.5)
  const svg = airSpeedPicture(answer)
  expect(named(readXml(svg), 'title')[0]?.text).toBe('Speed of the passive radiator')
  expect(named(readXml(svg), 'line', 'limit')).toEqual([])
})

it('group delay is told in periods of its tone: 10 ms at 100 Hz is one', () => {
  const answer = answerOf('shelf-pair')
  answer.curves.frequencyHz = [50, 100, 200]
  answer.curves.groupDelayMs = [4, 10, 2]
  expect(descOf(groupDelayPicture(answer))).toContain('longest at 100 Hz, 10.0 ms, 1.0 periods')
})
