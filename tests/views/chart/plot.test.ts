import { describe, expect, it } from 'vitest'
import { axisAround, linearAxis } from '../../../src/views/chart/linear-axis.ts'
import { type Plot, plot } from '../../../src/views/chart/plot.ts'
import { frameOf, named, piecesOf, readXml } from './read-svg.ts'

const frequencyHz = [20, 45, 105, 1000, 7300, 20_000]
const values = [50, 71.5, 88, 90, 92.25, 60]

const plotOf = (given: Partial<Plot> & { values?: readonly (number | null)[] } = {}) =>
  plot({
    id: 'sample',
    title: 'A sample',
    says: ['It rises.', 'And falls.'],
    frequencyHz,
    marks: [],
    panels: [
      {
        axisTitle: 'Level (dB)',
        axis: linearAxis({ domain: [50, 100], ticks: [50, 75, 100] }),
        height: 200,
        curves: [{ values: given.values ?? values, look: 'first' }],
      },
    ],
    ...given,
  })

const curveOf = (svg: string) => piecesOf(named(readXml(svg), 'path', 'curve')[0]?.attributes['d'] ?? '')

describe('a curve', () => {
  it('runs through its values, frequencies by their logarithm', () => {
    const svg = plotOf()
    const { left, right, top, bottom } = frameOf(readXml(svg))
    const [piece = []] = curveOf(svg)
    expect(piece).toHaveLength(frequencyHz.length)
    for (const [index, [x, y]] of piece.entries()) {
      const octaves = Math.log2((frequencyHz[index] ?? 0) / 20) / Math.log2(1000)
      const height = ((values[index] ?? 0) - 50) / 50
      expect(x).toBeCloseTo(left + octaves * (right - left), 1)
      expect(y).toBeCloseTo(bottom - height * (bottom - top), 1)
    }
  })

  it('is split where a value is missing, and a point between two gaps is a ring', () => {
    const svg = plotOf({ values: [50, null, 88, Number.NaN, 92, 60] })
    expect(curveOf(svg).map((piece) => piece.length)).toEqual([1, 1, 2])
    expect(named(readXml(svg), 'circle', 'lone')).toHaveLength(2)
  })

  it.each([
    ['no point', [], []],
    ['one point', [100], [3]],
    ['one frequency twice', [100, 100], [3, 4]],
    ['equal values', [20, 200], [83, 83]],
    ['only gaps', [20, 200], [null, null]],
    ['0 Hz', [0, 20, 200], [1, 2, 3]],
    ['a huge range', [1e-6, 1, 1e9], [-1e12, 0, 1e12]],
    ['fewer values than frequencies', [20, 200, 2000], [1]],
  ])('%s makes a picture without a word that is no number', (_, hz, some) => {
    const svg = plotOf({
      frequencyHz: hz,
      panels: [
        { axisTitle: 'x', axis: axisAround(some), height: 100, curves: [{ values: some, look: 'first' }] },
      ],
    })
    for (const { attributes } of readXml(svg))
      for (const value of Object.values(attributes)) expect(value).not.toMatch(/NaN|Infinity|undefined|null/)
  })
})

describe('what stands around it', () => {
  it('ticks are written at their places, the axes named with their units', () => {
    const elements = readXml(plotOf())
    const { left, right, top, bottom } = frameOf(elements)
    const ticks = named(elements, 'text', 'tick')
    expect(ticks.map(({ text }) => text)).toEqual([
      '50',
      '75',
      '100',
      '20',
      '50',
      '100',
      '200',
      '500',
      '1 k',
      '2 k',
      '5 k',
      '10 k',
      '20 k',
    ])
    const at = (text: string, name: string) =>
      Number(ticks.findLast((tick) => tick.text === text)?.attributes[name])
    expect(at('1 k', 'x')).toBeCloseTo(left + ((right - left) * Math.log10(50)) / 3, 1)
    expect(at('75', 'y')).toBeCloseTo((top + bottom) / 2 + 4, 1)
    const words = named(elements, 'text').map(({ text }) => text)
    expect(words).toEqual(expect.arrayContaining(['Frequency (Hz)', 'Level (dB)']))
  })

  it('marks stand at their frequency; those beyond the curve are left out', () => {
    const elements = readXml(
      plotOf({
        marks: [
          { hz: 105, text: 'f3' },
          { hz: 105, text: 'fb' },
          { hz: 5, text: 'too low' },
        ],
      }),
    )
    const { left, right } = frameOf(elements)
    const lines = named(elements, 'line', 'mark').map(({ attributes }) => Number(attributes['x1']))
    expect(lines).toHaveLength(1)
    expect(lines[0]).toBeCloseTo(left + ((right - left) * Math.log10(105 / 20)) / 3, 1)
    const words = named(elements, 'text').map(({ text }) => text)
    expect(words).toEqual(expect.arrayContaining(['f3', 'fb']))
    expect(words).not.toContain('too low')
  })

  it('it is an image with title and description, of a size on paper', () => {
    const elements = readXml(plotOf())
    const [svg] = elements
    expect(svg?.attributes).toMatchObject({
      role: 'img',
      width: '160mm',
      'aria-labelledby': 'sample-title sample-desc',
    })
    const [, , width, height] = (svg?.attributes['viewBox'] ?? '').split(' ').map(Number)
    expect(Number(svg?.attributes['height']?.replace('mm', '')) / 160).toBeCloseTo(
      (height ?? 0) / (width ?? 1),
      3,
    )
    expect(named(elements, 'title')[0]).toMatchObject({
      attributes: { id: 'sample-title' },
      text: 'A sample',
    })
    expect(named(elements, 'desc')[0]).toMatchObject({
      attributes: { id: 'sample-desc' },
      text: 'It rises. And falls.',
    })
  })

  it('a title of any length and any signs stays text, and stays in the picture', () => {
    const unfit = '\u0000\u001b\ud800'
    const around = (between: string) =>
      `<script>alert("1")</script> & ]]> ${between} 'quoted' ${'long '.repeat(60)}`
    const elements = readXml(plotOf({ title: around(unfit) }))
    expect(named(elements, 'script')).toEqual([])
    expect(named(elements, 'title')[0]?.text).toBe(around('\ufffd\ufffd\ufffd'))
    expect(named(elements, 'text', 'title')[0]?.text).toMatch(/^<script>alert\("1"\).*…$/)
  })

  it('the same values give the same bytes', () => {
    expect(plotOf()).toBe(plotOf())
  })
})
