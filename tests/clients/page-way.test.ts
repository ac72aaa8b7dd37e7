import { readFileSync } from 'node:fs'
import type { Locator, Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { drawn, type Screen, servedPage, visit } from './touch-page.ts'

const { service, browser } = await servedPage()

/** A driver as its data sheet has it, in the units people write. */
const DRIVER: [string, string][] = [
  ['Own resonance fs', '110'],
  ['Damping, total Qts', '0,5'],
  ['Softness as a volume of air Vas', '1.4'],
  ['Cone area Sd', '36'],
  ['Resistance on a meter Re', '3.6'],
  ['Clean travel, one way xmax', '2.5'],
]

const field = (page: Page, label: string): Locator => page.getByLabel(label, { exact: true })

async function sheetIsThere(page: Page): Promise<void> {
  const download = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save as PDF' }).click()
  const file = await (await download).path()
  expect(readFileSync(file).subarray(0, 5).toString()).toBe('%PDF-')
}

describe.each<Screen>(['phone', 'tablet', 'kiosk'])(
  'from an empty page to the build sheet, on a %s',
  (screen) => {
    it('by touch', async () => {
      const { page, context, complaints } = await visit(browser, service.address, screen)
      const press = (target: Locator) => (screen === 'kiosk' ? target.click() : target.tap())
      await press(page.getByRole('button', { name: 'Begin with my parts' }))
      await page.getByText('Not enough yet').waitFor()
      for (const [label, text] of DRIVER) {
        await press(field(page, label))
        await field(page, label).fill(text)
      }
      await page
        .getByRole('button', { name: /^Take this box/ })
        .first()
        .waitFor()
      await drawn(page, () => press(page.getByRole('button', { name: /^Take this box/ }).first()))
      await drawn(page, () => field(page, 'Current it can give').fill('2'))
      expect(await page.locator('#verdict').getAttribute('data-kind')).toMatch(/^(ready|review)$/)
      for (const name of ['response', 'excursion', 'box', 'cutting'])
        expect(await page.locator(`[data-picture="${name}"] img`).getAttribute('alt'), name).toMatch(/\w{4}/)
      await sheetIsThere(page)
      expect(complaints).toEqual([])
      await context.close()
    })

    it('by keyboard only', async () => {
      const { page, context, complaints } = await visit(browser, service.address, screen)
      const reach = async (target: Locator) => {
        for (let presses = 0; presses < 150; presses += 1) {
          if (await target.evaluate((element) => element === document.activeElement).catch(() => false))
            return
          await page.keyboard.press('Tab')
        }
        throw new Error('the keyboard does not get there')
      }
      await reach(page.getByRole('button', { name: 'Begin with my parts' }))
      await page.keyboard.press('Enter')
      for (const [label, text] of DRIVER) {
        await reach(field(page, label))
        await page.keyboard.type(text)
      }
      await page.locator('body[data-drawn]').waitFor()
      await reach(field(page, 'Current it can give'))
      await drawn(page, () => page.keyboard.type('2'))
      await page.getByRole('heading', { name: 'Boxwright' }).focus()
      const download = page.waitForEvent('download')
      await reach(page.getByRole('button', { name: 'Save as PDF' }))
      await page.keyboard.press('Enter')
      expect((await download).suggestedFilename()).toBe('loudspeaker.pdf')
      expect(complaints).toEqual([])
      await context.close()
    })
  },
)

describe('on the way', () => {
  it('a remedy is applied by one touch, and taken back by another', async () => {
    const { page, context } = await visit(browser, service.address)
    await drawn(page, () => page.getByRole('button', { name: 'Show me an example' }).click())
    await drawn(page, () => page.getByRole('button', { name: /^Do this: Build it closed/ }).click())
    expect(await field(page, 'What kind of box').inputValue()).toBe('closed')
    expect(await page.getByText('no longer holds the cone').count()).toBe(0)
    await drawn(page, () => page.getByRole('button', { name: 'Undo' }).click())
    expect(await field(page, 'What kind of box').inputValue()).toBe('vented')
    await context.close()
  })

  it('units are taken as people write them, beside the number or chosen', async () => {
    const { page, context } = await visit(browser, service.address)
    await drawn(page, () => page.getByRole('button', { name: 'Show me an example' }).click())
    // 9 7/16 in and 24 cm are 239.7 and 240 mm: the same box to the eye, by the exact inch of 25.4 mm.
    await drawn(page, () => field(page, 'Height').fill('9 7/16 in'))
    expect(await page.locator('#verdict').getAttribute('data-kind')).toBe('review')
    await field(page, 'Height').fill('24')
    await drawn(page, () => page.getByLabel('Unit of Height').selectOption('cm'))
    expect(await page.getByText('97.6 Hz').count()).toBeGreaterThan(0)
    await context.close()
  })

  it('the sheet is printed from a frame that shows its own style under the policy of the page', async () => {
    const { page, context, complaints } = await visit(browser, service.address)
    await page.addInitScript(() => {
      Object.defineProperty(globalThis, 'print', {
        value: () => document.body.setAttribute('data-printed', 'yes'),
      })
    })
    await page.reload()
    await drawn(page, () => page.getByRole('button', { name: 'Show me an example' }).click())
    await page.getByRole('button', { name: 'Print build sheet' }).click()
    const sheet = page.frameLocator('#sheet')
    await sheet.locator('body[data-printed]').waitFor()
    expect(await sheet.getByRole('heading', { level: 1 }).textContent()).toContain('shelf pair')
    const verdict = sheet.locator('.verdict').first()
    expect(await verdict.evaluate((element) => getComputedStyle(element).borderStyle)).not.toBe('none')
    expect(complaints).toEqual([])
    await context.close()
  })

  it('an unknown driver is guessed from its size, and the guess is said to be one', async () => {
    const { page, context } = await visit(browser, service.address)
    await page.getByRole('button', { name: 'Begin with my parts' }).click()
    await page.getByRole('button', { name: 'Measure or guess this driver' }).click()
    const dialog = page.getByRole('dialog')
    await dialog.getByLabel('Diameter of the cone', { exact: true }).fill('66')
    await dialog.getByLabel('Resistance on a meter Re', { exact: true }).fill('3.6')
    await drawn(page, () => dialog.getByRole('button', { name: 'Use the guess for now' }).click())
    // As many digits as somebody would write.
    expect(await field(page, 'Own resonance fs').inputValue()).toMatch(/^[\d.]{2,6}$/)
    expect(await page.locator('#verdict').getAttribute('data-kind')).toBe('review')
    expect(await page.locator('#findings').textContent()).toMatch(/guess/)
    await context.close()
  })
})
