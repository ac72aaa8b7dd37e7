import { expect, it } from 'vitest'
import { xmlText } from '../../../src/views/chart/xml-text.ts'
import { readXml } from './read-svg.ts'

it.each([
  ['<script>alert(1)</script>', '<script>alert(1)</script>'],
  [`a & b < c > d "e" 'f'`, `a & b < c > d "e" 'f'`],
  ['café 扬声器 🔊', 'café 扬声器 🔊'],
  ['tab\tline\nend', 'tab\tline\nend'],
  ['\u0000\u0008\u001f\ufffe', '\ufffd\ufffd\ufffd\ufffd'],
  ['half \ud83d and \udd0a', 'half \ufffd and \ufffd'],
])('%j comes back as text', (text, read) => {
  const [, inside] = readXml(`<a><b c="${xmlText(text)}">${xmlText(text)}</b></a>`)
  expect(inside).toEqual({ name: 'b', attributes: { c: read }, text: read })
})

it.each(['<a>', '<a></b>', '<a b="1" b="2"/>', '<a>&nbsp;</a>', '<a>x & y</a>', '<a/><a/>', '<a b=1/>'])(
  'the reader of these tests refuses %s',
  (broken) => {
    expect(() => readXml(broken)).toThrow()
  },
)
