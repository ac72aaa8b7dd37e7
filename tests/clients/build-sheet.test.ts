import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { inflateRawSync } from 'node:zlib'
import jsqr from 'jsqr'
import { afterAll, describe, expect, it } from 'vitest'
import { buildApp } from '../held-app.ts'
import { middle, PX_PER_MM, panelMm, type Seen, see, textOf } from './seen-page.ts'
import { startBrowser } from './touch-page.ts'

const app = await buildApp()
const browser = await startBrowser()
const folder = mkdtempSync(join(tmpdir(), 'build-sheet-'))
afterAll(async () => {
  await browser.close()
  await app.close()
  rmSync(folder, { recursive: true })
})

const DESIGN = JSON.parse(readFileSync(new URL('../designs/shelf-pair.json', import.meta.url), 'utf8'))
const HOST = '192.168.1.20:8080'
const PAPERS = { a4: [210, 297], letter: [215.9, 279.4] } as const
type Paper = keyof typeof PAPERS

const sheet = async (query: string, payload: object = DESIGN): Promise<Buffer> =>
  (await app.inject({ method: 'POST', url: `/v1/design-check?${query}`, payload, headers: { host: HOST } }))
    .rawPayload

async function fromService(paper: Paper): Promise<string> {
  const file = join(folder, `${paper}.pdf`)
  writeFileSync(file, await sheet(`format=pdf&paper=${paper}`))
  return file
}

/** The sheet as a browser prints it, at 100 %. */
async function fromBrowser(paper: Paper): Promise<string> {
  const file = join(folder, `browser-${paper}.pdf`)
  const page = await browser.newPage()
  await page.setContent((await sheet('format=html')).toString('utf8'))
  await page.pdf({ path: file, format: paper, preferCSSPageSize: true })
  await page.close()
  return file
}

const pageWith = (file: string, words: string): number => {
  const index = textOf(file).findIndex((text) => text.includes(words))
  if (index < 0) throw new Error(`no page with "${words}"`)
  return index + 1
}

/** What the code on a page says, by a reader of others. */
function scanned({ grey, widthPx, heightPx }: Seen): string | undefined {
  const pixels = new Uint8ClampedArray(4 * widthPx * heightPx).fill(255)
  for (const [index, value] of grey.entries()) pixels.fill(value, 4 * index, 4 * index + 3)
  return jsqr.default(pixels, widthPx, heightPx)?.data
}

/** The marks of whole centimetres are the tallest of a ruler: the eleven of them, wherever it stands on the page. */
function rulerMm({ heightPx, runsAt }: Seen): number {
  for (let yMm = 5; yMm < heightPx / PX_PER_MM - 5; yMm += 0.25) {
    const marks = runsAt(yMm).filter(({ from, to }) => to - from < 0.6 && to < 130)
    const steps = marks.slice(1).map((mark, index) => middle(mark) - middle(marks[index]!))
    if (marks.length === 11 && steps.every((step) => Math.abs(step - 10) < 0.5))
      return middle(marks[10]!) - middle(marks[0]!)
  }
  throw new Error('no ruler')
}

describe.each(['a4', 'letter'] as const)('the build sheet on %s', (paper) => {
  it.each([
    ['by the service', fromService],
    ['by a browser', fromBrowser],
  ])('has its template at true size, printed %s', async (_, print) => {
    const file = await print(paper)
    const seen = see(file, pageWith(file, 'Template front'))
    expect(seen.widthPx / PX_PER_MM).toBeCloseTo(PAPERS[paper][0], 0)
    expect(seen.heightPx / PX_PER_MM).toBeCloseTo(PAPERS[paper][1], 0)
    expect(Math.abs(rulerMm(seen) - 100)).toBeLessThan(0.3)
    // The front of the request is 120 mm wide.
    expect(Math.abs(panelMm(seen) - 120)).toBeLessThan(0.3)
  })

  it.each([
    ['by the service', fromService],
    ['by a browser', fromBrowser],
  ])('has a code that brings the design back, printed %s', async (_, print) => {
    const file = await print(paper)
    const link = scanned(see(file, pageWith(file, 'Back to the design')))
    const [origin, packed = ''] = link?.split('/#d=') ?? []
    expect(origin).toBe(`http://${HOST}`)
    expect(JSON.parse(inflateRawSync(Buffer.from(packed, 'base64url')).toString('utf8'))).toEqual(DESIGN)
  })

  it('keeps the edge of the paper bare, where printers do not reach', async () => {
    const file = await fromService(paper)
    const seen = see(file, 1)
    for (let yMm = 1; yMm < seen.heightPx / PX_PER_MM - 1; yMm += 0.5) {
      const runs = seen.runsAt(yMm)
      if (yMm < 7) expect(runs).toEqual([])
      for (const { from, to } of runs) {
        expect(from).toBeGreaterThan(8)
        expect(to).toBeLessThan(seen.widthPx / PX_PER_MM - 8)
      }
    }
  })

  it('numbers its pages, and tells truly on which the drawings are', async () => {
    const pages = textOf(await fromService(paper))
    for (const [index, text] of pages.entries())
      expect(text).toContain(`page ${index + 1} of ${pages.length}`)
    const whole = pages.join('\n')
    const page = (words: RegExp): number => Number(words.exec(whole)?.[1])
    expect(pages[page(/sawing order: pages (\d+)/) - 1]).toContain('Cutting diagram of ply offcut')
    expect(pages[page(/at true size: pages (\d+)/) - 1]).toContain('Panel front')
    expect(pages[page(/taken apart: page (\d+)/) - 1]).toContain('The box: shelf pair')
  })

  it('has no heading at the foot of a page and no table that goes on without its head', async () => {
    const pages = textOf(await fromService(paper))
    const headings =
      /^(\d\. .*|What .*|The build in figures|Cut list|Holes|Wiring|Step by step|Back to the design|Taken where .*)$/
    for (const text of pages) {
      const lines = text
        .split('\n')
        .map((line) => line.trim())
        .filter((line) => line !== '')
      // The last line is the foot of the page.
      expect(lines.at(-2)).not.toMatch(headings)
    }
    const heads = (title: RegExp) => pages.filter((text) => title.test(text)).length
    const inNote = pages.filter((text) =>
      /Clamp 30 minutes|as measured or as its data sheet/.test(text),
    ).length
    expect(heads(/What\s+How much\s+Note/)).toBeGreaterThanOrEqual(inNote)
  })
})

it('of a long list goes on over pages, each with the head of the table', async () => {
  const many = { ...DESIGN, drivers: [{ ...DESIGN.drivers[0], count: 16 }] }
  const tall = {
    ...many,
    boxes: 1,
    amplifier: { ...DESIGN.amplifier, channels: 1 },
    wiring: { parallel: Array.from({ length: 4 }, () => ({ series: ['main', 'main', 'main', 'main'] })) },
    box: { ...DESIGN.box, outer: { widthMm: 600, heightMm: 900, depthMm: 200 } },
    stock: [{ lengthMm: 2440, widthMm: 1220, thicknessMm: 12 }],
  }
  const file = join(folder, 'tall.pdf')
  writeFileSync(file, await sheet('format=pdf', tall))
  const withHoles = textOf(file).filter((text) => /main \d+ screw \d/.test(text))
  expect(withHoles.length).toBeGreaterThan(2)
  for (const text of withHoles) expect(text).toMatch(/hole\s+x\s+y\s+size\s+depth\s+how/)
})
