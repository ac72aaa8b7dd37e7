import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { drawn, keptDesign, press, servedPage, visit } from './touch-page.ts'

const { service, browser } = await servedPage()

const twoWay = JSON.parse(readFileSync('tests/designs/two-way-monitor.json', 'utf8'))
const driver = (page: Page, index: number) => page.locator('.driver').nth(index)
const open = (page: Page, design: object) =>
  page.locator('#file').setInputFiles({
    name: 'd.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(design)),
  })

/** The usual series of three values a decade and four (E12), nearest to a value by ratio. */
const nearestE12 = (value: number): number => {
  const decade = 10 ** Math.floor(Math.log10(value))
  const series = [1, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2, 10].map((one) => one * decade)
  const far = (one: number) => Math.abs(Math.log(one / value))
  return Number(series.reduce((best, one) => (far(one) < far(best) ? one : best)).toPrecision(2))
}

it('two kinds of driver are wired by one touch, parts and load from the service', async () => {
  const { page, context, complaints } = await visit(browser, service.address)
  await open(page, { ...twoWay, wiring: undefined })
  await page.getByText('Still needed: How to wire them.').waitFor()
  const offer = page.locator('#wirings li', { hasText: 'woofer up to 3500 Hz' })
  await offer.getByText(/capacitor; \d/).waitFor()
  const said = await offer.textContent()
  await drawn(page, () => press(page, 'Wire so: woofer up to 3500 Hz, tweeter from 3500 Hz'))
  const [woofer, tweeter] = (await keptDesign(page)).wiring.parallel
  expect(woofer.series[1]).toBe('woofer')
  expect(tweeter.series[1]).toBe('tweeter')
  // First order by hand: C = 1 / (2 pi f R), 5.6 ohm and 0.02 mH: 5.62 ohm at 3500 Hz.
  expect(tweeter.series[0].capacitorUf).toBe(nearestE12(1e6 / (2 * Math.PI * 3500 * 5.62)))
  expect(said).toContain(`${tweeter.series[0].capacitorUf}\u00a0µF`)
  const load = await page.locator('.tile', { hasText: 'Load on a channel' }).textContent()
  const rated = /([\d.]+) Ω/.exec(load ?? '')?.[1]
  expect(said).toContain(`; ${rated}\u00a0Ω`)
  expect(complaints).toEqual([])
  await context.close()
})

it('equal drivers beside another kind hang together as the amplifier may drive them', async () => {
  const { page, context } = await visit(browser, service.address)
  const [woofer, tweeter] = twoWay.drivers
  const drivers = [
    { ...woofer, count: 4 },
    { ...tweeter, count: 2 },
  ]
  await open(page, {
    ...twoWay,
    box: { ...twoWay.box, outer: { widthMm: 300, heightMm: 800, depthMm: 300 } },
    drivers,
  })
  await page.getByText(/What was wired stays until you choose/).waitFor()
  await drawn(page, () => press(page, 'Wire so: woofer up to 3500 Hz, tweeter from 3500 Hz'))
  const [low, high] = (await keptDesign(page)).wiring.parallel
  // Four of 8 ohm in parallel are 2 ohm and two tweeters 2.8 ohm: below 80 % of the 4 ohm of the board.
  const pair = { series: ['woofer', 'woofer'] }
  expect([
    { parallel: [pair, pair] },
    { series: [{ parallel: ['woofer', 'woofer'] }, { parallel: ['woofer', 'woofer'] }] },
  ]).toContainEqual(low.series[1].parallel ? low.series[1] : { series: low.series.slice(1) })
  expect(high.series.slice(1)).toEqual(['tweeter', 'tweeter'])
  expect(high.series[0].capacitorUf).toBe(nearestE12(1e6 / (2 * Math.PI * 3500 * 11.24)))
  expect(await page.locator('#wirings').textContent()).not.toContain('stays until')
  await context.close()
})

it('seventeen of a kind are no number to wire, and a name too long is told once', async () => {
  const { page, context } = await visit(browser, service.address)
  await open(page, twoWay)
  await page.locator('#verdict[data-kind="review"]').waitFor()
  const count = driver(page, 0).getByLabel('How many', { exact: false })
  await count.fill('17')
  await page.locator('#wirings').getByText('from 1 to 16').waitFor()
  expect(await page.locator('#wirings button').count()).toBe(0)
  await count.fill('1')
  await page.locator('#verdict[data-kind="review"]').waitFor()
  await driver(page, 0).getByLabel('Name', { exact: true }).fill('w'.repeat(80))
  await page.locator('#faults li').first().waitFor()
  expect(await page.locator('#faults li').allTextContents()).toEqual([expect.stringContaining('Name')])
  await context.close()
})

it('a driver that is added leaves the crossover alone, is wired beside it, and is told of when it goes', async () => {
  const { page, context, complaints } = await visit(browser, service.address)
  await open(page, twoWay)
  await page.locator('#verdict[data-kind="review"]').waitFor()
  await press(page, 'Add another kind of driver')
  await driver(page, 2).getByLabel('It has its own closed back').check()
  await driver(page, 2).getByLabel('Resistance on a meter Re').fill('16')
  await page
    .getByText(/"third" is not in the wiring/)
    .first()
    .waitFor()
  expect((await keptDesign(page)).wiring).toEqual(twoWay.wiring)
  await drawn(page, () => press(page, 'Wire so: The others as they are, third from 8000 Hz'))
  const { wiring } = await keptDesign(page)
  expect(wiring.parallel.slice(0, 2)).toEqual(twoWay.wiring.parallel)
  expect(wiring.parallel[2]).toEqual({
    series: [{ capacitorUf: nearestE12(1e6 / (2 * Math.PI * 8000 * 16)) }, 'third'],
  })
  await drawn(page, () => press(page, 'Remove tweeter'))
  expect(await page.locator('#lost-wiring').textContent()).toContain('3.3\u00a0µF capacitor and tweeter')
  await drawn(page, () => press(page, 'Bring it back'))
  expect((await keptDesign(page)).wiring).toEqual(wiring)
  expect((await keptDesign(page)).drivers).toHaveLength(3)
  expect(await page.locator('#lost-wiring').count()).toBe(0)
  expect(complaints).toEqual([])
  await context.close()
})

it('three kinds are wired by one touch, and another way by the next', async () => {
  const { page, context } = await visit(browser, service.address, 'phone')
  const third = { id: 'third', sharesBox: false, parameters: { reOhm: 6, fsHz: 300 } }
  const [woofer, tweeter] = twoWay.drivers
  const treble = { ...tweeter, parameters: { ...tweeter.parameters, fsHz: 1500 } }
  await open(page, { ...twoWay, wiring: undefined, drivers: [woofer, treble, third] })
  await drawn(page, () =>
    press(page, 'Wire so: woofer up to 600 Hz, third 600 to 3500 Hz, tweeter from 3500 Hz'),
  )
  const [, middle] = (await keptDesign(page)).wiring.parallel
  // By hand: a coil of R / (2 pi f) and a capacitor of 1 / (2 pi f R) for a plain 6 ohm.
  expect(middle.series[0].inductorMh).toBeCloseTo((1000 * 6) / (2 * Math.PI * 3500), 1)
  expect(middle.series[1].capacitorUf).toBeGreaterThan(30)
  expect(middle.series[2]).toBe('third')
  await page.getByText('Wire them another way').click()
  await drawn(page, () => press(page, /^Wire so: woofer up to 800 Hz/))
  expect((await keptDesign(page)).wiring.parallel[1].series[0].inductorMh).toBeLessThan(
    middle.series[0].inductorMh,
  )
  expect(await page.locator('#more-wirings').getAttribute('open')).not.toBeNull()
  await drawn(page, () => press(page, /^Wire so: As before/))
  expect((await keptDesign(page)).wiring.parallel[1]).toEqual(middle)
  await context.close()
})

it('drivers that the channels cannot share evenly are named', async () => {
  const { page, context } = await visit(browser, service.address)
  await open(page, { ...twoWay, wiring: undefined, amplifier: { ...twoWay.amplifier, channels: 2 } })
  await page.getByText('woofer and tweeter: the channels of a box cannot share them evenly.').waitFor()
  await context.close()
})

it('by keyboard the focus stays near what was pressed', async () => {
  const { page, context } = await visit(browser, service.address, 'phone')
  await open(page, { ...twoWay, wiring: undefined })
  const focus = () => page.evaluate(() => document.activeElement?.id ?? '')
  const byKey = async (name: string | RegExp) => {
    await page.getByRole('button', { name, exact: true }).focus()
    await drawn(page, () => page.keyboard.press('Enter'))
  }
  await page.getByText('Still needed: How to wire them.').waitFor()
  await byKey('Wire so: woofer up to 3500 Hz, tweeter from 3500 Hz')
  expect(await focus()).toBe('wirings')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: /^Wire so: woofer up to 2500/ }).waitFor()
  await byKey('Remove tweeter')
  const y = (await page.locator('#lost-wiring').boundingBox())?.y ?? -1
  expect(y).toBeGreaterThan(0)
  expect(y).toBeLessThan(780)
  expect(await focus()).toBe('add-driver')
  await page.keyboard.press('Tab')
  await drawn(page, () => page.keyboard.press('Enter'))
  expect(await page.locator('.driver').count()).toBe(2)
  expect(await focus()).toBe('add-driver')
  await context.close()
})

it('a second kind of driver in the same air is told why that cannot be, at the box to tick', async () => {
  const { page, context, complaints } = await visit(browser, service.address)
  await open(page, {
    ...twoWay,
    wiring: undefined,
    drivers: twoWay.drivers.map((one: object) => ({ ...one, sharesBox: undefined })),
  })
  const tick = page.locator('.field.switch.wrong', { hasText: 'It has its own closed back' })
  await tick.first().waitFor()
  expect(await tick.first().textContent()).toMatch(/share|air/)
  expect(await page.locator('#faults').textContent()).not.toContain('Still needed: It has its own')
  expect(complaints).toEqual([])
  await context.close()
})
