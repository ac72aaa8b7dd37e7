import { describe, expect, it } from 'vitest'
import {
  branchesOf,
  groupsIn,
  isEven,
  isFair,
  namesIn,
  partsIn,
  without,
  wordsOf,
} from '../../src/kiosk/browser/wiring-tree.ts'

const coil = { inductorMh: 0.3, resistanceOhm: 0.3 }
const crossover = {
  parallel: [{ series: [coil, 'woofer'] }, { series: [{ capacitorUf: 3.3 }, 'tweeter'] }],
}

describe('a wiring', () => {
  it('names its drivers, one for each place, and its parts', () => {
    expect(namesIn(crossover)).toEqual(['woofer', 'tweeter'])
    expect(namesIn({ series: ['main', { parallel: ['main', 'main'] }] })).toEqual(['main', 'main', 'main'])
    expect(partsIn(crossover)).toEqual(['0.3\u00a0mH coil', '3.3\u00a0µF capacitor'])
    expect(partsIn({ series: [{ resistorOhm: 2.2 }, 'main'] })).toEqual(['2.2\u00a0Ω resistor'])
  })

  it('is put in words, equal branches counted', () => {
    expect(wordsOf('main')).toBe('main')
    expect(wordsOf(crossover)).toBe(
      '(0.3\u00a0mH coil and woofer in series) and (3.3\u00a0µF capacitor and tweeter in series) in parallel',
    )
    expect(wordsOf({ parallel: [{ series: ['a', 'a'] }, { series: ['a', 'a'] }] })).toBe(
      '2 × (2 × a in series) in parallel',
    )
  })

  it('tells how drivers of a kind hang together, beside the parts', () => {
    expect(groupsIn(crossover)).toEqual([])
    expect(groupsIn({ parallel: [{ series: [coil, 'w', 'w'] }, 'tweeter'] })).toEqual(['2 × w in series'])
    const four = { parallel: [{ series: ['w', 'w'] }, { series: ['w', 'w'] }] }
    expect(groupsIn({ parallel: [{ series: [coil, four] }, { series: [{ capacitorUf: 4 }, 't'] }] })).toEqual(
      ['2 × (2 × w in series) in parallel'],
    )
  })

  it('of anything that a bent file brings is read without failing', () => {
    for (const bent of [
      null,
      7,
      true,
      [],
      ['a'],
      {},
      { series: 'a' },
      { parallel: [null, { series: [3] }] },
    ]) {
      expect(namesIn(bent)).toEqual([])
      expect(groupsIn(bent)).toEqual([])
      expect(wordsOf(bent)).toEqual(expect.any(String))
      expect(without(bent, 'a')).not.toBe('a')
    }
  })

  it('loses a driver with the parts that served it alone, and no other', () => {
    expect(without(crossover, 'tweeter')).toEqual({ series: [coil, 'woofer'] })
    expect(without(crossover, 'somebody')).toEqual(crossover)
    expect(without('main', 'main')).toBeUndefined()
    const zobel = { series: [{ resistorOhm: 5 }, { capacitorUf: 10 }] }
    const padded = { series: [{ resistorOhm: 2 }, { parallel: [{ resistorOhm: 9 }, 'tweeter', zobel] }] }
    expect(without({ parallel: ['woofer', padded] }, 'tweeter')).toBe('woofer')
    const shared = { series: [{ capacitorUf: 5 }, { parallel: ['tweeter', 'ribbon'] }] }
    expect(without(shared, 'tweeter')).toEqual({ series: [{ capacitorUf: 5 }, 'ribbon'] })
  })

  it('is even where every driver gets the same', () => {
    expect(isEven({ parallel: [{ series: ['a', 'a'] }, { series: ['a', 'a'] }] })).toBe(true)
    expect(isEven('a')).toBe(true)
    // One of three in series with two in parallel gets twice the voltage of each of those.
    expect(isEven({ series: ['a', { parallel: ['a', 'a'] }] })).toBe(false)
  })

  it('is fair where all of a kind stand alike, whatever the other kinds get', () => {
    expect(isFair(crossover)).toBe(true)
    expect(isFair({ parallel: [{ series: ['a', 'a'] }, 'b'] })).toBe(true)
    // One of the two shares its voltage with the other kind.
    expect(isFair({ series: [{ parallel: ['a', 'b'] }, 'a'] })).toBe(false)
    expect(isFair({ parallel: [{ series: [coil, 'a'] }, 'a'] })).toBe(false)
  })

  it('has branches side by side or in a row', () => {
    expect(branchesOf(crossover, 'parallel')).toHaveLength(2)
    expect(branchesOf(crossover, 'series')).toEqual([crossover])
    expect(branchesOf('main', 'parallel')).toEqual(['main'])
  })
})
