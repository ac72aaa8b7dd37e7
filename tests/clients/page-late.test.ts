import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'
import { height, press, servedPage, showExample, visit } from './touch-page.ts'

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
