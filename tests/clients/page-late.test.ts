import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { height, keptDesign, press, servedPage, showExample, visit } from './touch-page.ts'

const { service, browser } = await servedPage()

const hang = (page: Page) => page.route('**/v1/design-check*', () => undefined)

it('an answer that does not come leaves the one before marked as old, and nothing of it can be taken', async () => {
  const { page, context, complaints } = await visit(browser, service.address)
  await showExample(page)
  await hang(page)
  await height(page).fill('230')
  await page.getByText('Asking the service').waitFor()
  await page.locator('#answered.stale').waitFor()
  const form = () =>
    page.evaluate(() => JSON.stringify([...document.querySelectorAll('input')].map((x) => x.value)))
  const before = await form()
  await page.locator('#findings button.do').first().click()
  await page.getByText('That was for the design as it stood before.').waitFor()
  expect(await form()).toBe(before)
  expect(complaints).toEqual([])
  await context.close()
})

it('nothing of one design stands beside the next: no picture, no notice, no sheet', async () => {
  const { page, context, complaints } = await visit(browser, service.address)
  await showExample(page)
  await press(page, 'Copy link')
  await page.getByText('the whole design is in it').waitFor()
  await press(page, 'Start over')
  expect(await page.getByText('the whole design is in it').isVisible()).toBe(false)
  await hang(page)
  await press(page, 'Begin with my parts')
  expect(await page.locator('[data-picture] img:visible').count()).toBe(0)
  await page.unroute('**/v1/design-check*')
  expect(complaints).toEqual([])
  await context.close()
})

it('pictures that are slow take no verdict away', async () => {
  const { page, context, complaints } = await visit(browser, service.address)
  await page.route('**/v1/design-check?format=svg*', async (route) => {
    await new Promise((done) => setTimeout(done, 3000))
    await route.continue()
  })
  await press(page, 'Show me an example')
  await page.locator('#verdict[data-kind="review"]').waitFor()
  await page.waitForTimeout(2200)
  expect(await page.locator('#verdict').getAttribute('data-kind')).toBe('review')
  expect(await page.locator('#answered.stale').count()).toBe(0)
  await page.locator('[data-picture="box"] img:visible').waitFor()
  expect(await page.locator('[data-picture="box"] img.stale').count()).toBe(0)
  expect(await page.locator('#verdict').getAttribute('data-kind')).toBe('review')
  expect(complaints).toEqual([])
  await context.close()
})

it('a way to wire that is still being sized does not come into the next design, nor into the store', async () => {
  const { page, context, complaints } = await visit(browser, service.address)
  await page.locator('#file').setInputFiles('tests/designs/two-way-monitor.json')
  await page.locator('#verdict[data-kind="review"], #verdict[data-kind="ready"]').waitFor()
  await page.getByText('Wire them another way').click()
  const offer = page.getByRole('button', { name: /^Wire so: All straight/ })
  await offer.waitFor()
  await hang(page)
  await page.route('**/v1/load-impedance', () => undefined)
  await offer.click()
  await press(page, 'Start over')
  await page.unrouteAll({ behavior: 'ignoreErrors' })
  await page.waitForTimeout(500)
  expect(await keptDesign(page)).toEqual({})
  await page.reload()
  await page.getByText('What is on your bench?').waitFor()
  expect(complaints).toEqual([])
  await context.close()
})
