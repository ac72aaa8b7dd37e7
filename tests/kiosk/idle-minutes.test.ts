import { expect, it } from 'vitest'
import { idleMinutes } from '../../src/kiosk/browser/idle-minutes.ts'

it.each([
  ['', 10],
  ['?idle=30', 30],
  ['?idle=0', 0],
  ['?idle=-5', 10],
  ['?idle=long', 10],
])('%j waits %d minutes', (search, minutes) => {
  expect(idleMinutes(search)).toBe(minutes)
})

it('a wait longer than a timer can hold does not end at once', () => {
  // HTML standard, timers: the delay is a signed 32-bit integer of milliseconds.
  const delayMs = idleMinutes('?idle=1e9') * 60_000
  expect(delayMs | 0).toBe(Math.trunc(delayMs))
})
