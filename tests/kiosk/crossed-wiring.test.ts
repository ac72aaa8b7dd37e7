import { expect, it } from 'vitest'
import { crossed } from '../../src/kiosk/browser/crossed-wiring.ts'

const none = {
  zobelOhm: null,
  zobelUf: null,
  padSeriesOhm: null,
  padShuntOhm: null,
  padSeriesW: null,
  padShuntW: null,
  padRatingW: null,
}

it('the coil stands before the bass, the capacitor of the usual series before the treble', () => {
  // First order at 3000 Hz by hand: L = R / (2 pi f) = 6.4 / 18850 = 0.34 mH, C = 1 / (2 pi f R) = 1 / (18850 x 5.6) = 9.5 uF.
  const treble = {
    ...none,
    driver: 'tweeter',
    loadOhm: 5.6,
    inductorMh: 0.297,
    capacitorUf: 9.47,
    capacitorE12Uf: 10,
    cornerWithItHz: 2842,
    coilLossDb: null,
  }
  const bass = {
    ...treble,
    driver: 'woofer',
    loadOhm: 6.4,
    inductorMh: 0.3395,
    capacitorE12Uf: 8.2,
    coilLossDb: 0.4,
  }
  expect(crossed([treble, bass])).toEqual({
    parallel: [
      { series: [{ inductorMh: 0.34, resistanceOhm: 0.3 }, 'woofer'] },
      { series: [{ capacitorUf: 10 }, 'tweeter'] },
    ],
  })
  expect(crossed([treble])).toBeUndefined()
})
