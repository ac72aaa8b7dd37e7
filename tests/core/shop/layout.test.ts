import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import { randomFrom } from '../../../src/core/shop/layout/random.ts'
import type { CutListRequest, CutListSections } from '../../../src/schema/cut-list.ts'
import { publishedSample, tinyCases } from '../../outside/cutting/instances.ts'
import { faultsOfLayout } from './saw-by-hand.ts'

function laid(request: CutListRequest): CutListSections {
  const result = cutList(request, { portLengthMm: null })
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  return result.sections
}

describe('published instances: Berkey & Wang 1987, Martello & Vigo 1998', () => {
  it.each(publishedSample())('$id lies between its lower bound and the best on record', (instance) => {
    const [lengthMm, widthMm] = instance.sheet
    const request: CutListRequest = {
      parts: instance.parts.map(([length, width]) => ({ lengthMm: length, widthMm: width })),
      stock: [{ lengthMm, widthMm, count: 100 }],
      workshop: { kerfMm: 0 },
    }
    const sections = laid(request)
    expect(faultsOfLayout(request, sections)).toEqual([])
    expect(sections.notPlaced).toEqual([])
    expect(sections.sheets.length).toBeGreaterThanOrEqual(instance.lowerBound)
    expect(sections.sheets.length).toBeLessThanOrEqual(instance.bestGuillotine)
    expect(sections.bound).toBe(instance.lowerBound)
  })
})

describe('cases for paper and pencil, decided by exhaustive search', () => {
  it.each(tinyCases())('$id: $why', ({ parts, stock, kerfMm, sheets, use }) => {
    const request: CutListRequest = { parts, stock, workshop: { kerfMm } }
    const sections = laid(request)
    expect(faultsOfLayout(request, sections)).toEqual([])
    if (sheets === null) expect(sections.notPlaced.length).toBeGreaterThan(0)
    else {
      expect(sections.notPlaced).toEqual([])
      expect(sections.sheets).toHaveLength(sheets)
      expect(sections.bound).toBeLessThanOrEqual(sheets)
    }
    for (const [id, count] of Object.entries(use ?? {})) {
      expect(sections.sheets.filter(({ stock: board }) => board === id)).toHaveLength(count)
    }
  })
})

describe('bounds that a pencil proves', () => {
  const bound = (request: CutListRequest) => laid({ ...request, workshop: { kerfMm: 0 } }).bound

  it('parts that exclude each other: 20 x 3 lies along 21 x 9 and leaves 6, too little for 9 x 7', () => {
    // By area one board does: 2 x 63 + 60 of 189.
    const parts = [
      { lengthMm: 9, widthMm: 7, count: 2 },
      { lengthMm: 20, widthMm: 3 },
    ]
    expect(bound({ parts, stock: [{ lengthMm: 21, widthMm: 9, count: 9 }] })).toBe(2)
  })

  it('short parts beside long ones: of 16, either 10 or 9 leaves room for one 4 only', () => {
    // Three long parts need a board each and take three of the four short ones; by area three boards do, 44 of 48.
    const strip = (lengthMm: number, count: number) => ({
      lengthMm,
      widthMm: 10,
      count,
      grain: 'length' as const,
    })
    const stock = [{ lengthMm: 16, widthMm: 10, count: 9, grain: 'length' as const }]
    expect(bound({ parts: [strip(4, 4), strip(10, 1), strip(9, 2)], stock })).toBe(4)
  })
})

const side = (most: number) => fc.integer({ min: 4, max: most * 10 }).map((tenths) => tenths / 10)
const requests = fc.record({
  parts: fc.array(
    fc.record({
      lengthMm: side(300),
      widthMm: side(200),
      count: fc.integer({ min: 1, max: 4 }),
      grain: fc.constantFrom('any' as const, 'length' as const, 'width' as const),
    }),
    { minLength: 1, maxLength: 8 },
  ),
  stock: fc.array(
    fc.record({
      lengthMm: side(600),
      widthMm: side(400),
      count: fc.integer({ min: 1, max: 3 }),
      trimMm: fc.constantFrom(0, 2.5, 5),
      grain: fc.constantFrom('none' as const, 'length' as const, 'width' as const),
    }),
    { minLength: 1, maxLength: 3 },
  ),
  workshop: fc.record({ kerfMm: fc.constantFrom(0, 1, 2.4, 3.2) }),
})

const SEED = 1987

it(`any request gives a layout that a saw can follow (seed ${SEED})`, () => {
  fc.assert(
    fc.property(requests, (request) => {
      const sections = laid(request)
      expect(faultsOfLayout(request, sections)).toEqual([])
      if (sections.bound !== null && sections.notPlaced.length === 0) {
        expect(sections.bound).toBeLessThanOrEqual(sections.sheets.length)
      }
    }),
    { seed: SEED, numRuns: 60 },
  )
})

describe('limits', () => {
  it('the same request gives the same layout', () => {
    const [, , third] = publishedSample()
    const request: CutListRequest = {
      parts: third!.parts.map(([lengthMm, widthMm]) => ({ lengthMm, widthMm })),
      stock: [{ lengthMm: third!.sheet[0], widthMm: third!.sheet[1], count: 50 }],
    }
    expect(laid(request)).toEqual(laid(request))
  })

  it('2000 pieces are laid out, 2001 are refused by name', () => {
    const random = randomFrom(5)
    const parts = Array.from({ length: 100 }, () => ({
      lengthMm: 40 + Math.floor(300 * random()),
      widthMm: 40 + Math.floor(200 * random()),
      count: 20,
    }))
    const request: CutListRequest = { parts, stock: [{ lengthMm: 2440, widthMm: 1220, count: 100 }] }
    expect(faultsOfLayout({ ...request, workshop: { kerfMm: 2.4 } }, laid(request))).toEqual([])
    const result = cutList(
      { ...request, parts: [...parts, { lengthMm: 50, widthMm: 50 }] },
      { portLengthMm: null },
    )
    expect(isRefusal(result) && result.faults.map(({ at }) => at)).toEqual(['/parts'])
  })

  it('effort never costs a board: more work is never worse', () => {
    for (const { parts, sheet } of publishedSample().slice(6, 8)) {
      const request: CutListRequest = {
        parts: parts.map(([lengthMm, widthMm]) => ({ lengthMm, widthMm })),
        stock: [{ lengthMm: sheet[0], widthMm: sheet[1], count: 50 }],
        workshop: { kerfMm: 0 },
      }
      const more = laid({ ...request, effort: { seconds: 0.2 } })
      expect(more.sheets.length).toBeLessThanOrEqual(laid(request).sheets.length)
    }
  })

  it('prefers cheap boards when every kind has a cost', () => {
    const sections = laid({
      parts: [{ lengthMm: 100, widthMm: 100 }],
      stock: [
        { id: 'dear', lengthMm: 100, widthMm: 100, cost: 9 },
        { id: 'cheap', lengthMm: 500, widthMm: 500, cost: 1 },
      ],
    })
    expect(sections.sheets.map(({ stock }) => stock)).toEqual(['cheap'])
  })

  it('costs add up exactly: 0.1 + 0.7 is no less than 0.8, and of equal prices fewer boards are taken', () => {
    const sections = laid({
      parts: [{ lengthMm: 100, widthMm: 100, count: 2 }],
      stock: [
        { id: 'a', lengthMm: 100, widthMm: 100, cost: 0.1 },
        { id: 'b', lengthMm: 100, widthMm: 100, cost: 0.7 },
        { id: 'both', lengthMm: 200, widthMm: 100, cost: 0.8 },
      ],
      workshop: { kerfMm: 0 },
    })
    expect(sections.sheets.map(({ stock }) => stock)).toEqual(['both'])
  })

  it('parts go only on boards of their thickness', () => {
    const sections = laid({
      parts: [{ lengthMm: 100, widthMm: 100, thicknessMm: 12 }],
      stock: [
        { id: 'thin', lengthMm: 300, widthMm: 300, thicknessMm: 9 },
        { id: 'right', lengthMm: 600, widthMm: 600, thicknessMm: 12 },
      ],
    })
    expect(sections.sheets.map(({ stock }) => stock)).toEqual(['right'])
  })

  it('says the smallest board that would take what is left over', () => {
    const sections = laid({
      parts: [{ id: 'shelf', lengthMm: 100, widthMm: 90, count: 3 }],
      stock: [{ lengthMm: 100, widthMm: 90 }],
      workshop: { kerfMm: 2 },
    })
    // Two pieces: 100 x (90 + 2 + 90) or (100 + 2 + 100) x 90; the second has less area, 18180 against 18200 mm2.
    expect(sections.notPlaced).toEqual([
      { id: 'shelf', count: 2, smallestBoardMm: { lengthMm: 202, widthMm: 90 } },
    ])
  })
})
