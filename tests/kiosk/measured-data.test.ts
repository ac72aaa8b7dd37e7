import { describe, expect, it } from 'vitest'
import { isOwnGuess, readingsFor, withFound } from '../../src/kiosk/browser/measured-data.ts'

const typed = { xmaxMm: 2.5, ratedPowerW: 15, ratedImpedanceOhm: 4 }
const of = (parameters: Record<string, number>, more = {}) => ({
  drivers: [{ id: 'main', parameters, ...more }],
})
const guess = { fsHz: 120, qms: 4, qes: 0.9, reOhm: 6, xmaxMm: 1 }

describe('data that were found', () => {
  it('as a guess fill only what is empty', () => {
    expect(withFound(of(typed), 0, { parameters: guess, guessed: true })).toEqual(
      of({ ...typed, fsHz: 120, qms: 4, qes: 0.9, reOhm: 6 }, { guessed: true }),
    )
  })

  it('as a guess do not contradict a total damping that was typed', () => {
    expect(withFound(of({ qts: 0.5 }), 0, { parameters: guess, guessed: true })).toEqual(
      of({ qts: 0.5, fsHz: 120, reOhm: 6, xmaxMm: 1 }, { guessed: true }),
    )
  })

  it('take the place of what an earlier guess brought, not of what was typed over it', () => {
    const guessed = of({ ...guess, ...typed, reOhm: 3.6 }, { guessed: true })
    const measured = { fsHz: 131, qms: 5, qes: 0.7 }
    expect(withFound(guessed, 0, { parameters: measured, guessed: false }, guess)).toEqual(
      of({ ...typed, reOhm: 3.6, ...measured }),
    )
  })

  it('stay a guess where something speaks against them, or another guess may be left', () => {
    const measured = { fsHz: 131, qms: 5, qes: 0.7 }
    expect(withFound(of(typed), 0, { parameters: measured, guessed: false, doubted: true })).toEqual(
      of({ ...typed, ...measured }, { guessed: true }),
    )
    // A file brings a guess of which this page does not know the figures.
    const opened = of({ ...guess, ...typed }, { guessed: true })
    expect(withFound(opened, 0, { parameters: measured, guessed: false })).toEqual(
      of({ ...guess, ...typed, ...measured }, { guessed: true }),
    )
    expect(isOwnGuess(opened, 0)).toBe(false)
    expect(isOwnGuess(opened, 0, { reOhm: 6, fsHz: 99 })).toBe(false)
    expect(isOwnGuess(opened, 0, guess)).toBe(true)
    const whole = of({ ...measured, ratedImpedanceOhm: 4 }, { guessed: true })
    expect(withFound(whole, 0, { parameters: measured, guessed: false })).toEqual(
      of({ ...measured, ratedImpedanceOhm: 4 }),
    )
  })

  it('when measured are better than a data sheet, and leave the rest of it', () => {
    const sheet = of({ fsHz: 110, qts: 0.5, ...typed })
    expect(withFound(sheet, 0, { parameters: { fsHz: 131, qms: 5, qes: 0.7 }, guessed: false })).toEqual(
      of({ ...typed, fsHz: 131, qms: 5, qes: 0.7 }),
    )
  })
})

describe('readings of a driver', () => {
  it('begin with the resistance and the print that the form has', () => {
    const draft = of({ reOhm: 3.6, ratedImpedanceOhm: 4 })
    const nothing = { id: 'main', readings: undefined, found: undefined }
    expect(readingsFor(draft, 0, nothing)).toEqual({
      drivers: [{ id: 'main', meterOhm: 3.6, ratedImpedanceOhm: 4 }],
    })
  })

  it('keep what was typed there, and never take a guess for a reading', () => {
    const draft = of({ reOhm: 6, ratedImpedanceOhm: 4 })
    const readings = { drivers: [{ id: 'main', ratedImpedanceOhm: 8 }] }
    expect(readingsFor(draft, 0, { id: 'main', readings, found: { reOhm: 6 } })).toEqual(readings)
  })
})
