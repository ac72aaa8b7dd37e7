import { expect, it } from 'vitest'
import { COMMAS_READ } from '../../src/api/comma-hint.ts'
import { sentence } from '../../src/kiosk/browser/sentence.ts'

it('a fault is a sentence of the page, without what is for a query or a sheet', () => {
  expect(sentence({ message: 'is missing' })).toBe('Is missing.')
  expect(sentence({ message: 'Is it there?' })).toBe('Is it there?')
  expect(sentence({ message: `"1,250" has a comma; ${COMMAS_READ}` })).toBe('"1,250" has a comma.')
})
