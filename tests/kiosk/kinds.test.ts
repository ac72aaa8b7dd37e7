import { describe, expect, it } from 'vitest'
import { fits, kindsOf } from '../../src/kiosk/browser/kinds.ts'

const driver = (id: string, more = {}) => ({ id, parameters: {}, ...more })

describe('kinds of driver', () => {
  it('stand from bass to treble: what shares the box, then by resonance, unknown ones as they were written', () => {
    const drivers = [
      driver('treble', { sharesBox: false, parameters: { fsHz: '1.2 kHz' } }),
      driver('middle', { sharesBox: false, parameters: { fsHz: 400 } }),
      driver('bass', { parameters: { fsHz: 5000 } }),
    ]
    expect(kindsOf({ drivers }).map(({ id }) => id)).toEqual(['bass', 'middle', 'treble'])
    const unknown = [driver('b', { sharesBox: false }), driver('a', { sharesBox: false }), driver('c')]
    expect(kindsOf({ drivers: unknown }).map(({ id }) => id)).toEqual(['c', 'b', 'a'])
  })

  it('hang on a channel as many as a box holds over the channels that end in it', () => {
    const drivers = [driver('main', { count: 4 }), driver('top', { sharesBox: false })]
    const each = (draft: Record<string, number | { channels: number }>) =>
      kindsOf({ drivers, ...draft }).map((kind) => kind.each)
    expect(each({ boxes: 2 })).toEqual([4, 1])
    expect(each({ boxes: 1, amplifier: { channels: 2 } })).toEqual([2, 0.5])
    expect(each({ boxes: 2, amplifier: { channels: 2 } })).toEqual([4, 1])
  })

  it('fit a wiring that has a place for each of them and for no other', () => {
    const kinds = kindsOf({ drivers: [driver('main', { count: 2 }), driver('top', { sharesBox: false })] })
    const top = { series: [{ capacitorUf: 4.7 }, 'top'] }
    expect(fits({ parallel: ['main', 'main', top] }, kinds)).toBe(true)
    expect(fits({ parallel: ['main', top] }, kinds)).toBe(false)
    expect(fits({ parallel: ['main', 'main'] }, kinds)).toBe(false)
    expect(fits({ parallel: ['main', 'main', top, 'ghost'] }, kinds)).toBe(false)
  })
})
