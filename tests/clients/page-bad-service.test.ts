import { expect, it } from 'vitest'
import { drawn, height, keptDesign, press, servedPage, showExample, visit } from './touch-page.ts'

const { service, browser } = await servedPage()

it('a page put in the place of the answer by something between is no answer; the next one is', async () => {
  const { page, context, complaints } = await visit(browser, service.address)
  await showExample(page)
  await page.route('**/v1/design-check', (route) => route.fulfill({ json: { login: 'please' } }))
  await height(page).fill('230')
  await page.getByText('The service failed (200).').waitFor()
  await page.unroute('**/v1/design-check')
  await page.locator('#verdict[data-kind="review"]').waitFor()
  expect(complaints).toEqual([])
  await context.close()
})

it('a picture that a busy service does not draw stays, marked as old, until it comes', async () => {
  const { page, context } = await visit(browser, service.address)
  await showExample(page)
  const picture = page.locator('[data-picture="box"] img')
  await page.route('**/*picture=box*', (route) => route.fulfill({ status: 503, body: '' }))
  await height(page).fill('230')
  await page.locator('[data-picture="box"] img.stale').waitFor()
  expect(await picture.isVisible()).toBe(true)
  await drawn(page, () => page.unroute('**/*picture=box*'))
  expect(await picture.getAttribute('class')).toBe('')
  await context.close()
})

it('a sheet cut off on its way is told, and a slow one can be stopped', async () => {
  const { page, context, complaints } = await visit(browser, service.address)
  await showExample(page)
  await page.evaluate(() => {
    // The body of a reply breaks off after its head, as when the network goes.
    const whole = Object.getOwnPropertyDescriptor(Response.prototype, 'body')?.get
    const cut = () => new ReadableStream({ pull: (body) => body.error(new TypeError('cut')) })
    Object.defineProperty(Response.prototype, 'body', {
      get() {
        return this.url.includes('format=pdf') ? cut() : whole?.call(this)
      },
    })
  })
  await press(page, 'Save as PDF')
  await page.getByText('so there is no build sheet now').waitFor()
  await page.route('**/*format=pdf*', () => undefined)
  await press(page, 'Save as PDF')
  await page.getByRole('progressbar').waitFor()
  await press(page, 'Stop')
  expect(await page.locator('#notice').isVisible()).toBe(false)
  expect(complaints).toEqual([])
  await context.close()
})

it('a browser that forbids a store or cannot pack a link says so and works on', async () => {
  const { page, context, complaints } = await visit(browser, service.address)
  await page.addInitScript(() => {
    Object.defineProperty(globalThis, 'localStorage', {
      get: () => {
        throw new DOMException('forbidden', 'SecurityError')
      },
    })
    Reflect.deleteProperty(globalThis, 'CompressionStream')
  })
  await page.reload()
  await showExample(page)
  await page.getByText('This browser keeps nothing').waitFor()
  await press(page, 'Copy link')
  await page.getByText('too old to pack a design into a link').waitFor()
  await height(page).fill('234')
  await press(page, 'Start over')
  await press(page, 'Bring back the last design')
  expect(await height(page).inputValue()).toBe('234')
  expect(complaints).toEqual([])
  await context.close()
})

it.each([
  ['a list that is an object', { drivers: {}, box: [], stock: {} }],
  ['numbers as drivers', { drivers: [3, null], box: 7 }],
  ['nothing where objects belong', { drivers: null, box: null, amplifier: null }],
])('%s opens, is told, and can be typed over', async (_name, design) => {
  const { page, context, complaints } = await visit(browser, service.address)
  await page.locator('#file').setInputFiles({
    name: 'bent.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify(design)),
  })
  await page.getByText('Something is not understood').waitFor()
  // No fault of a part is one of the wiring, and what stands there and is wrong can be left out.
  expect(await page.locator('#faults').textContent()).not.toContain('How to wire them')
  expect(await page.getByRole('button', { name: /^Leave out/ }).count()).toBeGreaterThan(0)
  await page.getByLabel('What kind of box').selectOption('closed')
  await press(page, 'Add another kind of driver')
  const kept = await page.evaluate(() => JSON.parse(localStorage.getItem('boxwright-design') ?? '{}'))
  expect(kept.box).toMatchObject({ kind: 'closed' })
  expect(Array.isArray(kept.drivers)).toBe(true)
  expect(complaints).toEqual([])
  await context.close()
})

it('a file of two megabytes is no design', async () => {
  const { page, context } = await visit(browser, service.address)
  await page.locator('#file').setInputFiles({
    name: 'long.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify({ name: 'x'.repeat(2_000_000) })),
  })
  await page.getByText('long.json holds no design').waitFor()
  await context.close()
})

it('one item of a list that is not understood is told at the field of the list', async () => {
  const { page, context } = await visit(browser, service.address)
  await showExample(page)
  await page.getByLabel('Hole saws on hand, mm').fill('22 wide')
  const field = page.locator('[data-at="/workshop/holeSawsMm"]')
  await field.locator('[aria-invalid="true"]').waitFor()
  expect(await field.locator('.hint').textContent()).toMatch(/wide/)
  await context.close()
})

it('what holds nothing in a file is said to, by its name, and can be left out; then the design is answered', async () => {
  const { page, context, complaints } = await visit(browser, service.address)
  await showExample(page)
  const design = await keptDesign(page)
  await page.locator('#file').setInputFiles({
    name: 'sheet.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify({ ...design, name: null, passiveRadiator: null, workshop: null })),
  })
  for (const name of ['/name', '/passiveRadiator', '/workshop']) {
    const leave = page.getByRole('button', { name: `Leave out ${name}`, exact: true })
    await leave.waitFor()
    await leave.click()
  }
  await page.locator('#verdict[data-kind="review"]').waitFor()
  expect(complaints).toEqual([])
  await context.close()
})

it('a ninth kind of driver is told at the drivers', async () => {
  const { page, context } = await visit(browser, service.address)
  await showExample(page)
  for (let i = 0; i < 8; i += 1) await press(page, 'Add another kind of driver')
  await page.locator('#faults', { hasText: 'Loudspeaker drivers: Must hold at most 8' }).waitFor()
  await context.close()
})

it('a long word does not push a small phone aside', async () => {
  const { page, context } = await visit(browser, service.address, 'phone')
  await page.setViewportSize({ width: 320, height: 640 })
  await showExample(page)
  await page
    .getByLabel('Name', { exact: true })
    .first()
    .fill('Wooferoftheoldtelevisionsetupstairsbythewindow')
  await press(page, 'Add another kind of driver')
  await page.getByRole('button', { name: /^Remove Wooferof/ }).waitFor()
  // WCAG 2.2, success criterion 1.4.10: no scrolling in two directions at 320 pixels.
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320)
  await context.close()
})
