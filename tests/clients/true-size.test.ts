import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { PaperSize } from '../../src/views/drawing/paper.ts'
import { drawable, printed, shelf, tower } from '../views/drawing/answers.ts'
import { middle, PX_PER_MM, panelMm, see, textOf } from './seen-page.ts'

let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'true-size-'))
})
afterAll(() => rmSync(folder, { recursive: true }))

async function frontOn(paper: PaperSize) {
  const file = join(folder, `${paper}.pdf`)
  writeFileSync(file, await printed(shelf(), paper))
  const page = 1 + textOf(file).findIndex((text) => text.includes('Template front'))
  return see(file, page)
}

describe.each(['A4', 'Letter'] as const)('the drilling template on %s', (paper) => {
  it('has a ruler of 100 mm and the panel at its size', async () => {
    const seen = await frontOn(paper)
    const [widthMm, heightMm] = paper === 'A4' ? [210, 297] : [215.9, 279.4]
    expect(seen.widthPx / PX_PER_MM).toBeCloseTo(widthMm, 0)
    expect(seen.heightPx / PX_PER_MM).toBeCloseTo(heightMm, 0)
    // The marks of whole centimetres are the tallest: eleven of them.
    const marks = seen.runsAt(14.5).filter(({ to }) => to < 115)
    expect(marks).toHaveLength(11)
    expect(Math.abs(middle(marks.at(-1)!) - middle(marks[0]!) - 100)).toBeLessThan(0.3)
    // The front of the request is 120 mm wide.
    expect(Math.abs(panelMm(seen) - 120)).toBeLessThan(0.3)
  })

  it('leaves the edge of the paper bare, where printers do not reach', async () => {
    const seen = await frontOn(paper)
    for (let yMm = 1; yMm < seen.heightPx / PX_PER_MM - 1; yMm += 0.5) {
      for (const { from, to } of seen.runsAt(yMm)) {
        expect(from).toBeGreaterThan(8)
        expect(to).toBeLessThan(seen.widthPx / PX_PER_MM - 8)
      }
    }
  })
})

it('says how to print on every template sheet, and prints ohm and mu', async () => {
  const file = join(folder, 'tower.pdf')
  writeFileSync(file, await printed(tower()))
  const pages = textOf(file)
  const templates = pages.filter((text) => text.includes('Template '))
  // Front and back are 1014 mm high: with 260 mm to a sheet that is five sheets each.
  expect(templates).toHaveLength(10)
  for (const text of templates) expect(text.replace(/\s+/g, ' ')).toContain('Print at 100 %')
  expect(pages[0]).toContain('"with signs" \u03a9 \u00b5')
})

it('tells of parts that no board takes', async () => {
  const file = join(folder, 'none.pdf')
  const parts = [{ lengthMm: 500, widthMm: 400 }]
  writeFileSync(file, await printed(drawable({ parts, stock: [{ lengthMm: 100, widthMm: 20 }] })))
  expect(textOf(file)[0]).toContain('Found no board: 1 × part 1, which a board of 500 × 400 mm would take.')
})

it('says that a template would take too many sheets instead of printing it', async () => {
  const file = join(folder, 'wall.pdf')
  const wall = shelf()
  const panels = wall.answer.panels.map((panel) => ({ ...panel, lengthMm: 2400, widthMm: 1200 }))
  writeFileSync(file, await printed({ ...wall, answer: { ...wall.answer, panels } }))
  const templates = textOf(file).filter((text) => text.includes('Template '))
  // Front and back have holes.
  expect(templates).toHaveLength(2)
  for (const text of templates) expect(text).toMatch(/it would take \d+ sheets/)
})
