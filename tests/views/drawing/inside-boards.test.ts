import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boxSvg } from '../../../src/views/drawing/cut-list-drawings.ts'
import { type Board, solidFaces } from '../../../src/views/drawing/solid-boards.ts'
import { drawable } from './answers.ts'
import { all, cornersOf, named, readSvg } from './read-svg.ts'

type Point = { xMm: number; yMm: number }
const SEED = 4711

/** How far along the line of sight a block is met from the eye's side; null where it is missed. Slab method, from memory. */
function metAt({ from, to }: Board[number], [x, y, z]: readonly number[]): number | null {
  // The projection looks along (1, -1, 1): moving so changes neither coordinate of the picture.
  const ways = [1, -1, 1]
  const spans = [x, y, z].map((start, axis) => {
    const ends = [from[axis]!, to[axis]!].map((end) => (end - start!) * ways[axis]!)
    return [Math.min(...ends), Math.max(...ends)]
  })
  const [enter, leave] = [Math.max(...spans.map(([a]) => a!)), Math.min(...spans.map(([, b]) => b!))]
  return enter < leave ? leave : null
}

const isIn = ({ xMm, yMm }: Point, points: readonly Point[]): boolean => {
  let odd = false
  points.forEach((a, index) => {
    const b = points[(index + 1) % points.length]!
    if (a.yMm > yMm !== b.yMm > yMm && xMm < a.xMm + ((yMm - a.yMm) / (b.yMm - a.yMm)) * (b.xMm - a.xMm))
      odd = !odd
  })
  return odd
}

it(`what is nearest to the eye is what shows, also of boards that cross (seed ${SEED})`, () => {
  const side = fc.integer({ min: -9, max: 9 })
  const block = fc
    .tuple(side, side, side, ...Array.from({ length: 3 }, () => fc.integer({ min: 1, max: 8 })))
    .map(([x, y, z, a, b, c]): Board[number] => ({
      from: [x, y, z],
      to: [x + (a ?? 1), y + (b ?? 1), z + (c ?? 1)],
    }))
  const boards = fc.array(fc.array(block, { minLength: 1, maxLength: 2 }), { minLength: 1, maxLength: 4 })
  // Off the grid, so that no line of sight runs along an edge.
  const sight = fc.tuple(side, side).map(([x, z]) => [x + 0.31, 0, z + 0.17])
  let met = 0
  fc.assert(
    fc.property(boards, fc.array(sight, { minLength: 30, maxLength: 30 }), (given, sights) => {
      const faces = solidFaces(given)
      for (const eye of sights) {
        const [x, , z] = eye
        const place = { xMm: x! * Math.cos(Math.PI / 6), yMm: z! - x! / 2 }
        const shown = faces.findLast(({ points }) => isIn(place, points))
        const depths = given.map((board) => Math.max(...board.map((one) => metAt(one, eye) ?? -Infinity)))
        const nearest = Math.max(...depths)
        if (nearest === -Infinity) expect(shown).toBeUndefined()
        else {
          met++
          expect(depths[shown!.board]).toBe(nearest)
        }
      }
    }),
    { seed: SEED, numRuns: 100 },
  )
  expect(met).toBeGreaterThan(500)
})

it('a window leaves the edges of a board without seams: outside and inside of a frame', () => {
  // A frame of 10 x 10 with a window of 6 x 6, one thick, lying: four blocks.
  const frame: Board = [
    { from: [0, 0, 0], to: [10, 2, 1] },
    { from: [0, 8, 0], to: [10, 10, 1] },
    { from: [0, 2, 0], to: [2, 8, 1] },
    { from: [8, 2, 0], to: [10, 8, 1] },
  ]
  const length = solidFaces([frame])
    .flatMap(({ edges }) => edges)
    .reduce((sum, [a, b]) => sum + Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm), 0)
  // In this projection lengths along the axes keep their ratios, all shortened alike; here to 1. Top: 4 x 10 outside
  // and 4 x 6 inside. Front and right side: their four edges, 22 each. In the window the same two inner faces, 14 each.
  expect(length).toBeCloseTo(64 + 2 * 22 + 2 * 14, 9)
})

describe('the box taken apart', () => {
  const box = {
    kind: 'vented' as const,
    outer: { widthMm: 200, heightMm: 320, depthMm: 240 },
    panelThicknessMm: 15,
    braces: [{ lies: 'level' as const }, { lies: 'upright' as const, atMm: 40, openShare: 0 }],
  }
  const stock = [{ lengthMm: 1220, widthMm: 800, thicknessMm: 15 }]
  const port = { shape: 'slot' as const, slot: { widthMm: 100, heightMm: 20, onWall: true }, lengthMm: 120 }
  const picture = (change: object) => {
    const { answer, request } = drawable({ box: { ...box, ...change }, stock, port })
    return readSvg(boxSvg(answer, request)!)
  }
  const wordsOf = (svg: ReturnType<typeof readSvg>) => named(svg, 'text').map(({ text }) => text)

  it('shows and lists braces and the boards of the duct, by number', () => {
    // Inside 170 x 290 x 210 mm; the duct is 120 - 15 mm long, its cheeks a board higher than the slot.
    const words = wordsOf(picture({}))
    for (const said of [
      'brace 1, 170 × 210',
      'brace 2, 290 × 210',
      'port shelf, 105 × 100',
      'port cheek, 105 × 35',
    ])
      expect(words).toContain(said)
    // Each number in the list, and once more on a board of which something is in sight.
    const count = (number: string) => words.filter((word) => word === number).length
    expect(['1', '2', '3', '4'].map(count)).toEqual([2, 2, 2, 2])
  })

  it('draws a brace higher up where it stands higher up', () => {
    const lowest = (atMm: number) => {
      const svg = picture({ braces: [{ lies: 'level', atMm }] })
      const heightMm = Number(svg.attributes['viewBox']!.split(' ')[3])
      const faces = all(svg).filter(
        ({ attributes, name }) => name === 'path' && attributes['class'] === 'paper',
      )
      // Papers of the duct come too; the highest corner is the brace's.
      return Math.max(...faces.flatMap((face) => cornersOf(face, heightMm)).map(({ y }) => y))
    }
    expect(lowest(250)).toBeGreaterThan(lowest(150) + 5)
  })

  it('has no list where nothing is inside', () => {
    const { answer, request } = drawable({ box: { ...box, kind: 'closed', braces: [] }, stock })
    expect(wordsOf(readSvg(boxSvg(answer, request)!))).not.toContain('1')
  })
})
