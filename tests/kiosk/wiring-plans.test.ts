import { describe, expect, it } from 'vitest'
import type { Draft, Json } from '../../src/kiosk/browser/draft.ts'
import { kindsOf } from '../../src/kiosk/browser/kinds.ts'
import { type Band, plansOf } from '../../src/kiosk/browser/wiring-plans.ts'

const treble = (id: string, fsHz?: number) => ({
  id,
  sharesBox: false,
  parameters: fsHz === undefined ? {} : { fsHz },
})
const withDrivers = (drivers: Json[], wiring?: Json): Draft =>
  wiring === undefined ? { drivers } : { drivers, wiring }
const plans = (draft: Draft, past: readonly Draft[] = []) => plansOf(kindsOf(draft), draft, past)

/** Whether the bands leave no note out between the lowest and the highest driver. */
function isWhole(bands: readonly Band[]): boolean {
  const starts = bands.flatMap(({ fromHz }) => (fromHz === undefined ? [] : [fromHz]))
  const ends = bands.flatMap(({ toHz }) => (toHz === undefined ? [] : [toHz]))
  return ends.every((end) => starts.includes(end)) && bands.some(({ toHz }) => toHz === undefined)
}

describe('ways to wire drivers', () => {
  it('play every note, whatever number of kinds there is, and name every kind once', () => {
    for (let kinds = 2; kinds <= 8; kinds += 1) {
      const others = Array.from({ length: kinds - 1 }, (_, i) => treble(`t${i}`, 500 * (i + 1)))
      const offered = plans(withDrivers([{ id: 'bass', parameters: {} }, ...others]))
      expect(offered.length).toBeGreaterThanOrEqual(3)
      for (const { bands, text } of offered) {
        expect(new Set(bands.map(({ id }) => id)).size, text).toBe(kinds)
        expect(bands, text).toHaveLength(kinds)
        expect(isWhole(bands), text).toBe(true)
        for (const { fromHz = 0, toHz = Number.POSITIVE_INFINITY } of bands) expect(fromHz).toBeLessThan(toHz)
      }
      expect(new Set(offered.map(({ text }) => text)).size).toBe(offered.length)
    }
  })

  it('hand over in the order of the resonances; both orders are on offer where those are not known', () => {
    const bass = { id: 'bass', parameters: {} }
    const known = plans(withDrivers([bass, treble('high', 1500), treble('mid', 300)]))
    expect(known[0]?.bands.map(({ id }) => id)).toEqual(['bass', 'mid', 'high'])
    const unknown = plans(withDrivers([bass, treble('x'), treble('y')]))
    expect(unknown.slice(0, 2).map(({ bands }) => bands.at(-1)?.id)).toEqual(['y', 'x'])
  })

  it.each([
    ['two kinds', [treble('top', 1900)]],
    ['three alike', [treble('mid', 1990), treble('top', 2010)]],
    ['three, the last unknown', [treble('mid', 2400), treble('top')]],
  ])('hand no tweeter notes below twice its own resonance: %s', (_, others) => {
    // Common practice, no source.
    const draft = withDrivers([{ id: 'bass', parameters: { fsHz: 80 } }, ...others])
    const lowest = new Map(kindsOf(draft).map(({ id, fsHz }) => [id, fsHz > 0 ? 2 * fsHz : 0]))
    const offered = plans(draft)
    expect(new Set(offered.map(({ text }) => text)).size).toBe(offered.length)
    for (const { id, fromHz, toHz = Number.POSITIVE_INFINITY } of offered.flatMap(({ bands }) => bands)) {
      if (fromHz === undefined) continue
      expect(fromHz).toBeGreaterThanOrEqual(lowest.get(id) ?? 0)
      expect(fromHz).toBeLessThan(toHz)
    }
  })

  it('are the usual ones, no lower than the tweeter stands', () => {
    const pair = [{ id: 'bass', parameters: { fsHz: 80 } }, treble('top', 1900)]
    expect(plans(withDrivers(pair))[0]?.text).toBe('bass up to 3800 Hz, top from 3800 Hz')
    expect(plans(withDrivers(pair, 'bass'))[0]?.bands).toEqual([{ id: 'top', fromHz: 3800 }])
  })

  it('keep what is wired where only a driver is missing in it', () => {
    const wired = { series: ['main', 'main'] }
    const [first] = plans(withDrivers([{ id: 'main', count: 2 }, treble('top')], wired))
    expect(first?.kept).toEqual(wired)
    expect(first?.bands.map(({ id }) => id)).toEqual(['top'])
    const changed = plans(withDrivers([{ id: 'main', count: 4 }, treble('top')], wired))
    expect(changed.every(({ kept }) => kept === undefined)).toBe(true)
  })

  it('bring back the last wiring that fits', () => {
    const drivers = [{ id: 'main', count: 2 }]
    const [series, parallel] = [{ series: ['main', 'main'] }, { parallel: ['main', 'main'] }]
    const past = [withDrivers(drivers, series), withDrivers(drivers, { series: ['main', 'main', 'main'] })]
    expect(plans(withDrivers(drivers, parallel), past)[0]?.kept).toEqual(series)
    expect(plans(withDrivers(drivers, series), past)[0]?.kept).toBeUndefined()
  })
})
