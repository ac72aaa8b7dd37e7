import { describe, expect, it } from 'vitest'
import { namedAt, namesOf, renamed } from '../../src/kiosk/browser/driver-name.ts'

const before = {
  drivers: [{ id: 'main' }, { id: 'w' }],
  wiring: { parallel: [{ series: [{ inductorMh: 0.3 }, 'main'] }, 'w'] },
}

describe('another name for a driver', () => {
  it('goes into the wiring, letter by letter, also past the name of another driver', () => {
    let draft: ReturnType<typeof renamed> = before
    for (const name of [undefined, 'w', 'wo', 'woofer']) draft = renamed(draft, before, 0, name)
    expect(draft).toEqual({
      drivers: [{ id: 'woofer' }, { id: 'w' }],
      wiring: { parallel: [{ series: [{ inductorMh: 0.3 }, 'woofer'] }, 'w'] },
    })
  })

  it('is told from other places', () => {
    expect(namedAt('/drivers/1/id')).toBe(1)
    expect(namedAt('/drivers/1/count')).toBeUndefined()
  })
})

it('the names a driver had before are known, but not those of drivers that were taken out or have them now', () => {
  const called = (...names: string[]) => ({ drivers: names.map((id) => ({ id })) })
  const past = [called('main', 'second'), called('second'), called('se')]
  expect(namesOf(called('woofer'), 0, past)).toEqual(['woofer', 'se', 'second'])
  expect(namesOf(called('a', 'b'), 0, [called('b', 'a')])).toEqual(['a'])
})
