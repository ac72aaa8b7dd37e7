import { describe, expect, it } from 'vitest'
import type { Json } from '../../src/kiosk/browser/draft.ts'
import { withoutDriver } from '../../src/kiosk/browser/removed-driver.ts'

const [woofer, tweeter, ribbon] = [
  { id: 'woofer', parameters: { fsHz: 70 } },
  { id: 'tweeter', sharesBox: false },
  { id: 'ribbon', sharesBox: false },
]
const branch = (part: Json, id: string): Json => ({ series: [part, id] })
const low = branch({ inductorMh: 0.3 }, 'woofer')
const high = branch({ capacitorUf: 3.3 }, 'tweeter')
const highest = branch({ capacitorUf: 1 }, 'ribbon')
const twoWay = { boxes: 1, drivers: [woofer, tweeter], wiring: { parallel: [low, high] } }
const threeWay = {
  boxes: 1,
  drivers: [woofer, tweeter, ribbon],
  wiring: { parallel: [low, high, highest] },
}

describe('a driver that is taken out', () => {
  it('takes its branch along, says so, and comes back with it into what the design has become', () => {
    const { draft, said, back } = withoutDriver(threeWay, 1, [])
    expect(draft).toEqual({ boxes: 1, drivers: [woofer, ribbon], wiring: { parallel: [low, highest] } })
    expect(said).toContain('3.3\u00a0µF capacitor and tweeter in series')
    expect(said).not.toContain('ribbon')
    expect(back({ ...draft, boxes: 2 })).toEqual({ ...threeWay, boxes: 2 })
  })

  it('leaves no crossover before a driver that is alone', () => {
    const { draft, said } = withoutDriver(twoWay, 1, [])
    expect(draft).toEqual({ boxes: 1, drivers: [woofer] })
    expect(said).toContain('0.3\u00a0mH coil')
    expect(said).toContain('straight on the amplifier')
  })

  it('leaves the wiring that fitted before it came', () => {
    expect(withoutDriver(threeWay, 2, [twoWay]).draft).toEqual(twoWay)
    const pair = { ...twoWay, drivers: [{ ...woofer, count: 2 }], wiring: { series: ['woofer', 'woofer'] } }
    const both = {
      ...pair,
      drivers: [...pair.drivers, tweeter],
      wiring: { parallel: [pair.wiring, high] },
    }
    expect(withoutDriver(both, 1, [pair]).draft).toEqual(pair)
    // Without parts in it what is left of the wiring does by itself.
    expect(withoutDriver(both, 1, []).draft).toEqual(pair)
  })

  it('that was not wired leaves the wiring as it is, without a word', () => {
    const { draft, said } = withoutDriver({ ...threeWay, wiring: twoWay.wiring }, 2, [])
    expect(draft).toEqual(twoWay)
    expect(said).toBe('')
  })
})
