import { readFileSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { drawn, SCREENS, type Screen, servedPage, visit } from './touch-page.ts'

const { service, browser } = await servedPage()

interface Violation {
  id: string
  impact: string
  nodes: { target: string[]; failureSummary: string }[]
}

const AXE = readFileSync('node_modules/axe-core/axe.min.js', 'utf8')
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** What axe, a checker of others, finds against WCAG 2.2 AA; run beside the page, whose policy forbids foreign script. */
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(AXE)
  const { found, passed } = await page.evaluate<{ found: Violation[]; passed: number }>(
    `axe.run(document, { runOnly: ${JSON.stringify(TAGS)} }).then(({ violations, passes }) => ({ found: violations, passed: passes.length }))`,
  )
  // A checker that looked at nothing would find nothing.
  expect(passed).toBeGreaterThan(15)
  return found.flatMap(({ id, impact, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${impact} ${id} ${target.join(' ')}: ${failureSummary}`),
  )
}

const screens = Object.keys(SCREENS).flatMap((screen) =>
  ['light', 'dark'].map((colorScheme): [string, string] => [screen, colorScheme]),
)
const isScreen = (name: string): name is Screen => name in SCREENS

describe.each(screens)('on a %s, %s', (screen, colorScheme) => {
  it('start, empty form, answer and dialog hold WCAG 2.2 AA', async () => {
    if (!isScreen(screen)) throw new Error(screen)
    const { page, context } = await visit(browser, service.address, screen, { colorScheme, bypassCSP: true })
    expect(await violations(page)).toEqual([])
    await page.getByRole('button', { name: 'Begin with my parts' }).click()
    await page.getByText('Not enough yet').waitFor()
    expect(await violations(page)).toEqual([])
    await page.getByLabel('Own resonance fs').fill('letters')
    await page.getByText('Something is not understood').waitFor()
    expect(await violations(page)).toEqual([])
    await page.getByRole('button', { name: 'Measure or guess this driver' }).click()
    await page.getByRole('heading', { name: 'How to measure it' }).waitFor()
    expect(await violations(page)).toEqual([])
    await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click()
    await page.getByRole('button', { name: 'Start over' }).click()
    await drawn(page, () => page.getByRole('button', { name: 'Show me an example' }).click())
    for (const details of await page.locator('details').all())
      await details.evaluate((element) => element.setAttribute('open', ''))
    expect(await violations(page)).toEqual([])
    await page.getByRole('button', { name: /^Larger: Where to saw/ }).click()
    expect(await violations(page)).toEqual([])
    await context.close()
  })

  it('ways to wire, and what went with a driver, hold WCAG 2.2 AA', async () => {
    if (!isScreen(screen)) throw new Error(screen)
    const { page, context } = await visit(browser, service.address, screen, { colorScheme, bypassCSP: true })
    await page.locator('#file').setInputFiles('tests/designs/two-way-monitor.json')
    await page.getByText('Wire them another way').click()
    await page
      .getByText(/capacitor; \d/)
      .first()
      .waitFor()
    expect(await violations(page)).toEqual([])
    await drawn(page, () => page.getByRole('button', { name: 'Remove tweeter' }).click())
    await page.getByText('its wiring was taken out').waitFor()
    expect(await violations(page)).toEqual([])
    await context.close()
  })

  it('what is touched is at least 44 px high, links in running text apart', async () => {
    if (!isScreen(screen)) throw new Error(screen)
    const { page, context } = await visit(browser, service.address, screen, { colorScheme })
    await drawn(page, () => page.getByRole('button', { name: 'Show me an example' }).click())
    for (const details of await page.locator('details').all())
      await details.evaluate((element) => element.setAttribute('open', ''))
    const small = await page.evaluate(() =>
      [
        ...document.querySelectorAll(
          'button, select, summary, input:not([type=checkbox], [type=radio], [type=file])',
        ),
      ]
        .filter((element) => element.checkVisibility())
        .map((element) => ({ text: element.textContent, height: element.getBoundingClientRect().height }))
        .filter(({ height }) => height < 44),
    )
    expect(small).toEqual([])
    await context.close()
  })

  it('nothing is wider than the screen, also at 200 % letters', async () => {
    if (!isScreen(screen)) throw new Error(screen)
    const { page, context } = await visit(browser, service.address, screen, { colorScheme })
    await drawn(page, () => page.getByRole('button', { name: 'Show me an example' }).click())
    const over = () =>
      page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    expect(await over()).toBeLessThanOrEqual(0)
    await page.evaluate(() => document.documentElement.setAttribute('style', 'font-size: 200%'))
    expect(await over()).toBeLessThanOrEqual(0)
    await context.close()
  })
})

it('a picture is larger than a small screen when it is asked for larger, and closed without a search', async () => {
  const { page, context } = await visit(browser, service.address, 'phone')
  await drawn(page, () => page.getByRole('button', { name: 'Show me an example' }).click())
  await page.getByRole('button', { name: /^Larger: Where to saw/ }).click()
  const dialog = page.getByRole('dialog')
  const image = await dialog.getByRole('img').boundingBox()
  expect(image?.width).toBeGreaterThan(2 * SCREENS.phone.width)
  await dialog.evaluate((element) => element.scrollTo(500, 0))
  const close = dialog.getByRole('button', { name: 'Close' })
  expect((await close.boundingBox())?.x).toBeGreaterThanOrEqual(0)
  await close.tap()
  expect(await dialog.count()).toBe(0)
  await context.close()
})

it('the input being typed in does not move when the answer changes', async () => {
  const { page, context } = await visit(browser, service.address, 'phone')
  await drawn(page, () => page.getByRole('button', { name: 'Show me an example' }).click())
  const input = page.getByLabel('Tune the box to fb')
  await input.scrollIntoViewIfNeeded()
  await input.focus()
  const before = await input.boundingBox()
  for (const text of ['1', '10', '100', 'x', '90'])
    await Promise.all([
      page.waitForResponse((response) => response.url().endsWith('/v1/design-check')),
      input.fill(text),
    ])
  await page.waitForTimeout(300)
  const after = await input.boundingBox()
  expect(after?.y).toBeCloseTo(before?.y ?? 0, 0)
  await context.close()
})
