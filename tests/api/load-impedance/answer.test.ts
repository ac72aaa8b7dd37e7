import { afterAll, expect, it } from 'vitest'
import { buildApp } from '../../held-app.ts'

const app = await buildApp()
afterAll(() => app.close())

const ask = async (wiring: unknown) =>
  (
    await app.inject({
      method: 'POST',
      url: '/v1/load-impedance',
      payload: {
        drivers: [{ id: 'main', parameters: { reOhm: 6.8 } }],
        wiring,
        amplifier: { minimumLoadOhm: 4 },
      },
    })
  ).json()

it('of a load that is fine says that the amplifier may drive it', async () => {
  const { verdict, answer } = await ask('main')
  expect(verdict).not.toBe('blocked')
  expect(answer).toContain('The amplifier may drive it.')
})

it.each([
  ['a coil across the terminals', { parallel: ['main', { inductorMh: 10 }] }],
  ['a resistor that opens the circuit', { series: ['main', { resistorOhm: 1000 }] }],
])('of %s it does not', async (_, wiring) => {
  const { verdict, answer } = await ask(wiring)
  expect(verdict).toBe('blocked')
  expect(answer).toMatch(/^Do not build it like this/)
  expect(answer).not.toContain('may drive it')
})
