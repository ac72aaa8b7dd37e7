import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Fitting } from '../../../src/schema/fittings.ts'
import { box, laid, panel, withBox } from './small-box.ts'

// The back of the small box: 120 x 240 mm, walls 12 mm inside its edges, webs of 12 mm, the lead at (60, 32).
const WEB_MM = 12

/** Half sides of a fitting as it lies on the panel; a round one is its own circle. */
const halves = ({ holeDiameterMm, cutout, board }: Fitting): [number, number] => {
  const sides = cutout ?? board
  return sides === undefined
    ? [holeDiameterMm! / 2, holeDiameterMm! / 2]
    : [sides.widthMm / 2, sides.heightMm / 2]
}

type Lying = Fitting & { x: number; y: number }

/** Wood between two things, with a point walked round the edge of the first: a reckoning that is not ours. */
function woodMm(a: Lying, b: Lying): number {
  const edge = (one: Lying): [number, number][] => {
    const [h, v] = halves(one)
    return Array.from({ length: 360 }, (_, degree) => {
      const [x, y] = [Math.cos((degree * Math.PI) / 180), Math.sin((degree * Math.PI) / 180)]
      const reach = one.holeDiameterMm === undefined ? Math.min(h / Math.abs(x), v / Math.abs(y)) : h
      return [one.x + reach * x, one.y + reach * y]
    })
  }
  const others = edge(b)
  return Math.min(...edge(a).map(([x, y]) => Math.min(...others.map(([p, q]) => Math.hypot(x - p, y - q)))))
}

const homeless = (result: ReturnType<typeof laid>) =>
  result.findings.filter(({ code }) => code === 'back-holes-do-not-fit')

/** Where a fitting with a hole or a cutout lies on the back; null when it has no place. */
function placeOf(result: ReturnType<typeof laid>, fitting: Fitting): Lying | null {
  const hole = panel(result, 'back')?.holes.find(({ id }) => id === fitting.id)
  return hole === undefined ? null : { ...fitting, x: hole.xMm, y: hole.yMm }
}

describe('what looks for a place on the back', () => {
  it('goes round what the maker has placed', () => {
    // The board covers 90 to 150 mm of the height over nearly the whole width.
    const amplifier: Fitting = { id: 'amplifier', board: { widthMm: 80, heightMm: 60 }, xMm: 60, yMm: 120 }
    const socket: Fitting = { id: 'socket', cutout: { widthMm: 28, heightMm: 20 } }
    const lamp: Fitting = { id: 'lamp', holeDiameterMm: 12 }
    const result = withBox({ fittings: [socket, lamp, amplifier] })
    const lies = [socket, lamp].map((one) => placeOf(result, one)!)
    expect(homeless(result)).toEqual([])
    // Between the lead, which ends at 36 mm, and the board: 54 mm for a socket of 20 mm and two webs, and for no more.
    expect(lies.map(({ x, y }) => [x, y])).toEqual([
      [60, (36 + 90) / 2],
      [60, (150 + 228) / 2],
    ])
    expect(result.findings.filter(({ severity }) => severity === 'blocker')).toEqual([])
  })

  it('goes beside what the maker has placed where the middle is taken', () => {
    // A strip 20 mm wide from floor to ceiling in the middle: 38 mm stay left and right of it between the walls.
    const strip: Fitting = { id: 'strip', cutout: { widthMm: 20, heightMm: 190 }, xMm: 60, yMm: 130 }
    const lamp: Fitting = { id: 'lamp', holeDiameterMm: 10 }
    const result = withBox({ fittings: [lamp, strip] })
    expect(homeless(result)).toEqual([])
    // Webs of 12 mm to the strip, which ends at 70 mm, and to the wall at 108 mm: between 87 and 91 mm.
    const { x } = placeOf(result, lamp)!
    expect(Math.abs(x - 60)).toBeGreaterThanOrEqual(27)
    expect(Math.abs(x - 60)).toBeLessThanOrEqual(31)
  })

  it('the lead moves aside too, unless the maker says where it goes', () => {
    const jack: Fitting = { id: 'jack', cutout: { widthMm: 30, heightMm: 20 }, xMm: 60, yMm: 30 }
    const lead = panel(withBox({ fittings: [jack] }), 'back')?.holes.find(({ id }) => id === 'cable')
    // Jack to 75 mm, a web, half of 8 mm: the lead at 91 mm or further, or above 56 mm.
    expect(Math.abs(lead!.xMm - 60) >= 31 || lead!.yMm >= 56).toBe(true)
  })

  it('without room says so by name, at its own place, and leaves the others where they fit', () => {
    const plate: Fitting = { id: 'plate', cutout: { widthMm: 60, heightMm: 250 } }
    const lamp: Fitting = { id: 'lamp', holeDiameterMm: 12 }
    const wide: Fitting = { id: 'rail', cutout: { widthMm: 100, heightMm: 10 } }
    const result = withBox({ fittings: [plate, lamp, wide] })
    expect(placeOf(result, lamp)).not.toBeNull()
    expect(homeless(result).map(({ at, value }) => [at, value])).toEqual([
      // 36 to 228 mm are 192; plate and lamp with the webs between and at both ends want more.
      ['/box/fittings/0', 250 + 12 + 3 * 12 - 192],
      // 96 mm between the walls.
      ['/box/fittings/2', 4],
    ])
  })

  it('is told at the radiator where it is the radiator', () => {
    const frame = { outerDiameterMm: 90, cutoutDiameterMm: 78, depthMm: 20 }
    const passiveRadiator = { count: 2, fsHz: 40, qms: 8, vasL: 2, sdCm2: 30, frame }
    const result = laid({ box: { ...box, kind: 'passive-radiator' }, passiveRadiator })
    // One of 90 mm and two webs take 114 of 192 mm; a second one with its web wants 102 more.
    expect(homeless(result).map(({ at, value }) => [at, value])).toEqual([['/passiveRadiator', 24]])
    expect(panel(result, 'back')?.holes.map(({ id }) => id)).toContain('radiator 1')
  })

  it('fits once the box is as much higher as the remedy says', () => {
    const strip: Fitting = { id: 'strip', cutout: { widthMm: 60, heightMm: 20 }, xMm: 60, yMm: 150 }
    const plate: Fitting = { id: 'plate', cutout: { widthMm: 60, heightMm: 90 } }
    const [finding] = homeless(withBox({ fittings: [plate, strip] }))
    // 36 to 140 mm below the strip: 114 mm are wanted. 160 to 228 mm above it: 46 mm are missing there.
    expect(finding?.value).toBe(10)
    expect(finding?.remedies.at(-1)).toBe('Make the box 46 mm higher.')
    const higher = { outer: { ...box.outer!, heightMm: 240 + 46 } }
    expect(homeless(withBox({ ...higher, fittings: [plate, strip] }))).toEqual([])
    const lower = { outer: { ...box.outer!, heightMm: 240 + 45.9 } }
    expect(homeless(withBox({ ...lower, fittings: [plate, strip] }))).toHaveLength(1)
  })

  it('keeps its webs to everything, or is told: any fittings (seed 20240611)', () => {
    const seed = 20240611
    const size = fc.integer({ min: 4, max: 70 })
    const form = fc.oneof(
      size.map((holeDiameterMm) => ({ holeDiameterMm })),
      fc.tuple(size, size).map(([widthMm, heightMm]) => ({ cutout: { widthMm, heightMm } })),
    )
    const placed = fc.record({
      xMm: fc.integer({ min: 12, max: 108 }),
      yMm: fc.integer({ min: 12, max: 228 }),
    })
    const some = fc.array(fc.tuple(form, fc.option(placed, { nil: {} })), { minLength: 1, maxLength: 6 })
    fc.assert(
      fc.property(some, (chosen) => {
        const fittings: Fitting[] = chosen.map(([shape, where], index) => ({
          id: `fitting ${index}`,
          ...shape,
          ...where,
        }))
        const result = withBox({ fittings })
        const told = homeless(result).map(({ at }) => at)
        const lying = fittings.flatMap((fitting) => placeOf(result, fitting) ?? [])
        for (const [index, fitting] of fittings.entries()) {
          const found = placeOf(result, fitting)
          expect(found === null).toBe(told.includes(`/box/fittings/${index}`))
          if (found === null || fitting.xMm !== undefined) continue
          const [h, v] = halves(fitting)
          expect(Math.min(found.x - h, 120 - found.x - h)).toBeGreaterThanOrEqual(12 - 1e-6)
          expect(Math.min(found.y - v, 240 - found.y - v)).toBeGreaterThanOrEqual(24 - 1e-6)
          for (const other of lying.filter(({ id }) => id !== fitting.id))
            expect(woodMm(found, other), `${fitting.id} and ${other.id}`).toBeGreaterThanOrEqual(
              WEB_MM - 1e-6,
            )
        }
      }),
      { seed, numRuns: 60 },
    )
  })
})
