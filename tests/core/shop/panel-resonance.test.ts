import { describe, expect, it } from 'vitest'
import { clampedParameter, panelResonance } from '../../../src/core/shop/panel-resonance.ts'
import { checks, expectWithin } from '../../outside/checks.ts'

const rows = checks('shop-checks.json', 'panels')

describe('first resonance of panels: A. W. Leissa, NASA SP-160 (1969), and material values of Wood Handbook Table 12-1', () => {
  it.each(rows.filter(({ id }) => id.startsWith('panel-')))('$id', (check) => {
    const { sidesMm, thicknessMm, material, densityKgPerM3 } = check.inputs
    const resonance = panelResonance(sidesMm[0], sidesMm[1], thicknessMm, material, densityKgPerM3)
    expectWithin(check, 'firstModeHz', resonance?.supportedHz)
    expectWithin(check, 'firstModeClampedHz', resonance?.clampedHz)
  })

  it.each(rows.filter(({ id }) => id.startsWith('clamped-')))('$id', (check) => {
    expectWithin(check, 'frequencyParameter', clampedParameter(check.inputs['sideRatio']))
  })

  it('is not said of solid wood, which is many times stiffer along its grain', () => {
    expect(panelResonance(240, 136, 12, 'softwood', 450)).toBeNull()
  })
})
