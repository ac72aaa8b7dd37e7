import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { drawn, height, linkTo, servedPage, showExample, visit } from './touch-page.ts'

const { service, browser } = await servedPage()

const verdict = (page: Page) => page.locator('#verdict')

describe('bad input', () => {
  it.each([
    ['letters', 'abc', /does not start with a number/],
    ['another dimension', '3 kg', /mass/],
    ['an absurd size', '90000', /at most 5000 mm/],
    ['a negative size', '-4', /at least 5 mm/],
    ['a huge exponent', '1e999', /not a finite number|at most/],
  ])('%s in a field is told at the field, and nothing typed is lost', async (_name, text, said) => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    await height(page).fill(text)
    const field = page.locator('[data-at="/box/outer/heightMm"]')
    await field.locator('[aria-invalid="true"]').waitFor()
    expect(await field.locator('.hint').textContent()).toMatch(said)
    expect(await height(page).inputValue()).toBe(text)
    await page.reload()
    await field.locator('[aria-invalid="true"]').waitFor()
    expect(await height(page).inputValue()).toBe(text)
    await context.close()
  })

  it('a broken link says so and changes nothing', async () => {
    const { page, context, complaints } = await visit(browser, service.address)
    await showExample(page)
    await height(page).fill('250')
    await page.goto(`${service.address}/#d=AAAA`)
    await page.getByText('The design in this link cannot be read').waitFor()
    expect(await height(page).inputValue()).toBe('250')
    expect(complaints).toEqual([])
    await context.close()
  })

  it('a design of a newer version opens; what is not known here can be left out', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    const design = await page.evaluate(() => JSON.parse(localStorage.getItem('boxwright-design') ?? '{}'))
    await page.goto(service.address + linkTo({ ...design, horn: { flareHz: 300 } }))
    await page.getByText('Something is not understood').waitFor()
    await drawn(page, () => page.getByRole('button', { name: 'Leave out /horn' }).click())
    expect(await verdict(page).getAttribute('data-kind')).toBe('review')
    await context.close()
  })

  it('a file that is no design is told by its name', async () => {
    const { page, context } = await visit(browser, service.address)
    await page
      .locator('#file')
      .setInputFiles({ name: 'cat.json', mimeType: 'application/json', buffer: Buffer.from('[1') })
    await page.getByText('cat.json holds no design').waitFor()
    await context.close()
  })
})

describe('what is on the page', () => {
  it('survives a reload, and a power cut of the kiosk', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    await height(page).fill('251')
    await page.close({ runBeforeUnload: false })
    const again = await context.newPage()
    await again.goto(service.address)
    expect(await height(again).inputValue()).toBe('251')
    await context.close()
  })

  it('travels in its link and in its file', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    await page.getByRole('button', { name: 'Copy link' }).click()
    const link = await page.getByLabel('Link to this design').inputValue()
    const download = page.waitForEvent('download')
    await page.getByRole('button', { name: 'Save design' }).click()
    const file = await (await download).path()
    const other = await visit(browser, service.address)
    await drawn(other.page, () => other.page.goto(link).then(() => other.page.reload()))
    expect(await other.page.locator('#sentence').textContent()).toBe(
      await page.locator('#sentence').textContent(),
    )
    await other.page.getByRole('button', { name: 'Start over' }).click()
    await drawn(other.page, () => other.page.locator('#file').setInputFiles(file))
    expect(await other.page.locator('#sentence').textContent()).toBe(
      await page.locator('#sentence').textContent(),
    )
    await context.close()
    await other.context.close()
  })

  it('is not silently overwritten by another tab', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    const second = await context.newPage()
    await second.goto(service.address)
    await height(second).fill('260')
    await page.getByText('This design was changed in another tab.').waitFor()
    expect(await height(page).inputValue()).toBe('240')
    await page.getByRole('button', { name: 'Take that over' }).click()
    expect(await height(page).inputValue()).toBe('260')
    await context.close()
  })

  it('is cleared for the next visitor after a warning, and can be brought back', async () => {
    const { page, context } = await visit(browser, `${service.address}`)
    await page.clock.install()
    await page.goto(`${service.address}/?idle=5`)
    await page.getByRole('button', { name: 'Show me an example' }).click()
    await page.locator('body[data-drawn]').waitFor()
    // The clock runs on by itself while the machine draws: a minute of slack, for a busy one.
    await page.clock.fastForward('04:00')
    expect(await page.getByText('Still there?').count()).toBe(0)
    await page.clock.fastForward('01:01')
    await page.getByRole('button', { name: 'I am still here' }).click()
    expect(await height(page).inputValue()).toBe('240')
    await page.clock.fastForward('05:01')
    await page.getByText('Still there?').waitFor()
    await page.clock.runFor(31_000)
    await page.getByText('What is on your bench?').waitFor()
    await page.reload()
    await page.getByRole('button', { name: 'Bring back the last design' }).click()
    expect(await height(page).inputValue()).toBe('240')
    await context.close()
  })
})

describe('a slow network', () => {
  it('counts only the last question, and says that it is working', async () => {
    const { page, context, complaints } = await visit(browser, service.address)
    await showExample(page)
    let asked = 0
    await page.route('**/v1/design-check', async (route) => {
      asked += 1
      // The first question is answered last; its answer must never show.
      await new Promise((done) => setTimeout(done, asked === 1 ? 1500 : 400))
      await route.continue().catch(() => undefined)
    })
    await height(page).fill('200')
    await height(page).fill('300')
    await page.locator('#verdict.working').waitFor()
    await drawn(page, async () => undefined)
    const shown = await page.locator('#sentence').textContent()
    await page.waitForTimeout(1600)
    expect(await page.locator('#sentence').textContent()).toBe(shown)
    await page.unroute('**/v1/design-check')
    await drawn(page, () => height(page).fill('300.0'))
    expect(await page.locator('#sentence').textContent()).toBe(shown)
    expect(complaints).toEqual([])
    await context.close()
  })

  it('a long search shows its progress and can be stopped', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    await page.getByRole('button', { name: 'Look longer for a better cutting plan' }).click()
    await page.getByRole('progressbar').waitFor()
    await page.getByRole('button', { name: 'Stop' }).click()
    await page.getByText('Stopped.').waitFor()
    await context.close()
  })
})

describe('a plan from a longer search', () => {
  const PLAN = /One board|\d boards/
  const EARLIER = /found before was for other panels/

  it('goes when what is cut changes, comes back with it, and stays when something else changes', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    const said = page.locator('.longer [role=status]')
    // The first search is real; how long it looks is shortened on the way.
    await page.route('**/v1/cut-list*', async (route) => {
      const body = JSON.parse(route.request().postData() ?? '{}')
      await route.continue({ postData: JSON.stringify({ ...body, effort: { seconds: 0 } }) })
    })
    await page.getByRole('button', { name: 'Look longer for a better cutting plan' }).click()
    await said.getByText(PLAN).waitFor()
    await drawn(page, () => page.getByLabel('Own resonance fs').fill('130'))
    await drawn(page, () => page.getByLabel('Current it can give').fill('3'))
    expect(await said.textContent()).toMatch(PLAN)
    await drawn(page, () => height(page).fill('260'))
    expect(await said.textContent()).toMatch(EARLIER)
    expect(await page.getByRole('button', { name: 'Save this cutting plan (PDF)' }).count()).toBe(0)
    await drawn(page, () => page.getByRole('button', { name: 'Undo' }).click())
    expect(await said.textContent()).toMatch(PLAN)
    await page.getByRole('button', { name: 'Start over' }).click()
    await showExample(page)
    expect(await said.textContent()).toBe('')
    await context.close()
  })

  it('is not looked for any more when what is cut changes meanwhile', async () => {
    const { page, context, complaints } = await visit(browser, service.address)
    await showExample(page)
    // A search that goes on for as long as the test looks at it.
    await page.route('**/v1/cut-list*', () => undefined)
    await page.getByRole('button', { name: 'Look longer for a better cutting plan' }).click()
    await page.getByRole('progressbar').waitFor()
    await drawn(page, () => page.getByLabel('Own resonance fs').fill('130'))
    expect(await page.getByRole('progressbar').count()).toBe(1)
    await height(page).fill('260')
    await page.getByText('Stopped: what is to be cut has changed.').waitFor()
    expect(complaints).toEqual([])
    await context.close()
  })
})

describe('a dead service', () => {
  it('is said, nothing is lost, and it goes on by itself when the service is back', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    await service.kill()
    await height(page).fill('230')
    await page.getByText('The service does not answer.').waitFor()
    expect(await page.locator('#answered').getAttribute('class')).toBe('stale')
    await service.start(Number(new URL(service.address).port))
    await page.locator('#verdict[data-kind="review"]').waitFor()
    expect(await height(page).inputValue()).toBe('230')
    await context.close()
  })
})
