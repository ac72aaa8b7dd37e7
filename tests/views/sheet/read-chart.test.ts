import { expect, it } from 'vitest'
import { looksBy, readChart } from '../../../src/views/sheet/paper/read-chart.ts'

const CSS = `
.chart text { fill: black; font-size: 12px; }
.chart path, .chart line { fill: none; stroke-width: 1px; }
.chart .first { stroke: ink; }
.chart path.first { stroke-width: 3px; }
.chart line.limit { stroke: red; }
.chart .label { stroke: white; }
@media screen and (prefers-color-scheme: dark) { .chart .first { stroke: pale; } }
`

it('reads the elements of a chart with what stands in them', () => {
  const chart = readChart(
    '<svg viewBox="0 0 4 2"><g clip-path="url(#a)"><path class="first" d="M0,0"/></g><text x="1">a &#60; b</text></svg>',
  )
  expect(chart.attributes['viewBox']).toBe('0 0 4 2')
  expect(chart.children.map(({ name }) => name)).toEqual(['g', 'text'])
  expect(chart.children[0]?.children[0]?.attributes).toEqual({ class: 'first', d: 'M0,0' })
  expect(chart.children[1]?.text).toBe('a < b')
})

it('refuses what is no whole chart', () => {
  expect(() => readChart('<svg><g></svg>')).toThrow('cannot be read back')
})

// By CSS Selectors 3, section 9: a class is stronger than a tag, both together than either, and a dark screen is none.
it('gives an element the look that a browser prints', () => {
  const look = looksBy(CSS)
  const of = (name: string, kind: string) =>
    look({ name, attributes: { class: kind }, children: [], text: '' })
  expect(of('path', 'curve first')).toEqual({ fill: 'none', 'stroke-width': '3px', stroke: 'ink' })
  expect(of('line', 'limit')).toEqual({ fill: 'none', 'stroke-width': '1px', stroke: 'red' })
  expect(of('text', 'label limit')).toEqual({ fill: 'black', 'font-size': '12px', stroke: 'white' })
})
