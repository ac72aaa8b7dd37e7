import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { drawn, height, keptDesign, linkTo, press, servedPage, showExample, visit } from './touch-page.ts'

const { service, browser } = await servedPage()

const labelled = (page: Page, name: string) => page.getByLabel(name, { exact: true })
const coneIn = (page: Page) => page.getByRole('dialog').getByLabel('Diameter of the cone', { exact: true })
const measure = (page: Page) => press(page, /^Measure or guess this driver/)

describe('readings', () => {
  async function read(page: Page): Promise<void> {
    await press(page, 'Begin with my parts')
    await measure(page)
    await coneIn(page).fill('67')
    await page.keyboard.press('Escape')
  }
  async function expectRead(page: Page, text: string): Promise<void> {
    await measure(page)
    expect(await coneIn(page).inputValue()).toBe(text)
    await page.keyboard.press('Escape')
  }

  it('go with their design and come back with it', async () => {
    const { page, context } = await visit(browser, service.address)
    await read(page)
    await press(page, 'Start over')
    await press(page, 'Begin with my parts')
    await expectRead(page, '')
    await press(page, 'Start over')
    await press(page, 'Bring back the last design')
    await expectRead(page, '67')
    await page.locator('#file').setInputFiles('tests/designs/closed-desk-box.json')
    await page.getByText('Undo brings back').waitFor()
    await expectRead(page, '')
    await press(page, 'Undo')
    expect(await page.getByText('Undo brings back').count()).toBe(0)
    await expectRead(page, '67')
    await context.close()
  })

  it('are waited for three times as long, and come back after the page has cleared itself', async () => {
    const { page, context } = await visit(browser, service.address)
    await page.clock.install()
    await page.goto(`${service.address}/?idle=5`)
    await read(page)
    await measure(page)
    await page.clock.fastForward('05:10')
    await page.clock.fastForward('05:10')
    expect(await page.getByText('Still there?').count()).toBe(0)
    await page.clock.fastForward('05:10')
    await page.getByText('Still there?').waitFor()
    await page.clock.runFor(31_000)
    await page.reload()
    await press(page, 'Bring back the last design')
    await expectRead(page, '67')
    await context.close()
  })
})

it('a guess leaves what was typed, and goes by the print on the magnet', async () => {
  const { page, context } = await visit(browser, service.address)
  await press(page, 'Begin with my parts')
  await labelled(page, 'Printed impedance').fill('4')
  await labelled(page, 'Rated power').fill('15')
  await labelled(page, 'Clean travel, one way xmax').fill('2.5')
  await measure(page)
  await coneIn(page).fill('67')
  await press(page, 'Use the guess for now')
  const { parameters, guessed } = (await keptDesign(page)).drivers[0]
  expect(parameters).toMatchObject({ ratedImpedanceOhm: 4, ratedPowerW: 15, xmaxMm: 2.5 })
  expect(guessed).toBe(true)
  // The coil of a driver printed 4 ohm reads below 4 on a meter.
  expect(parameters.reOhm).toBeLessThan(4)
  expect(parameters.fsHz).toBeGreaterThan(20)
  await context.close()
})

describe('a field', () => {
  it('stays while it is emptied and typed anew', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    await labelled(page, 'I have a length').check()
    const length = labelled(page, 'Length of the tube')
    for (const field of [
      length,
      labelled(page, 'Width').first(),
      height(page),
      labelled(page, 'Depth').last(),
    ]) {
      await field.click()
      await page.keyboard.press('ControlOrMeta+A')
      await page.keyboard.press('Backspace')
    }
    await page.keyboard.type('175')
    await length.focus()
    await page.keyboard.type('75')
    expect(await length.inputValue()).toBe('75')
    const { box, port } = await keptDesign(page)
    expect(box.outer).toEqual({ depthMm: 175 })
    expect(port.lengthMm).toBe(75)
    await context.close()
  })

  it('that was left is one step of undo, and redo goes forward again', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    await height(page).fill('231')
    await labelled(page, 'Width').first().focus()
    await height(page).fill('999')
    await press(page, 'Undo')
    expect(await height(page).inputValue()).toBe('231')
    await press(page, 'Redo')
    expect(await height(page).inputValue()).toBe('999')
    expect(await page.getByRole('button', { name: 'Redo' }).isDisabled()).toBe(true)
    await context.close()
  })
})

it('the way of the size and of the tube comes back as it was', async () => {
  const { page, context } = await visit(browser, service.address)
  await showExample(page)
  const before = await keptDesign(page)
  await labelled(page, 'Outside measures').focus()
  for (const key of ['ArrowDown', 'ArrowDown', 'ArrowUp', 'ArrowUp']) await page.keyboard.press(key)
  await labelled(page, 'Tune the box to fb').fill('99')
  await labelled(page, 'I have a length').check()
  await labelled(page, 'I want a tuning').check()
  expect(await labelled(page, 'Tune the box to fb').inputValue()).toBe('99')
  expect((await keptDesign(page)).box).toEqual(before.box)
  await context.close()
})

it('undo and the tube of another kind of box outlive a reload', async () => {
  const { page, context } = await visit(browser, service.address)
  await showExample(page)
  await labelled(page, 'Tune the box to fb').fill('99')
  await page.getByLabel('What kind of box').selectOption('closed')
  await page.reload()
  await page.getByLabel('What kind of box').selectOption('vented')
  expect(await labelled(page, 'Tune the box to fb').inputValue()).toBe('99')
  await page.reload()
  await press(page, 'Undo')
  expect(await page.getByLabel('What kind of box').inputValue()).toBe('closed')
  await context.close()
})

describe('two tabs', () => {
  it('keep their own designs, and a link does not push out the one before', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    await height(page).fill('233')
    const other = await context.newPage()
    await other.goto(service.address + linkTo({ ...(await keptDesign(page)), name: 'other', boxes: 1 }))
    await other.getByText('Undo brings back').waitFor()
    await page.reload()
    expect((await keptDesign(page)).boxes).toBe(2)
    expect(await height(page).inputValue()).toBe('233')
    await page.close()
    await press(other, 'Start over')
    await press(other, 'Bring back the design 2 ago')
    expect(await height(other).inputValue()).toBe('233')
    await context.close()
  })

  it('the one that is cleared leaves what the other has kept', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    const other = await context.newPage()
    await other.goto(service.address)
    await height(other).fill('234')
    await press(page, 'Start over')
    await page.reload()
    await page.getByText('What is on your bench?').waitFor()
    await other.close()
    const third = await context.newPage()
    await third.goto(service.address)
    expect(await height(third).inputValue()).toBe('234')
    await context.close()
  })
})

it('the link of the design that is there changes nothing and promises nothing', async () => {
  const { page, context } = await visit(browser, service.address)
  await showExample(page)
  await height(page).fill('231')
  await page.goto(service.address + linkTo(await keptDesign(page)))
  await page.waitForFunction(() => location.hash === '')
  expect(await page.getByText('Undo brings back').count()).toBe(0)
  await press(page, 'Undo')
  expect(await height(page).inputValue()).toBe('240')
  await context.close()
})

it('a driver gets another name, and its wiring with it', async () => {
  const { page, context } = await visit(browser, service.address)
  await showExample(page)
  const id = (await keptDesign(page)).drivers[0].id
  await press(page, 'Add another kind of driver')
  await page.reload()
  await page.locator('#file').setInputFiles({
    name: 'wired.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify({ ...(await keptDesign(page)), wiring: { series: [id, 'second'] } })),
  })
  await page.getByText('Undo brings back').waitFor()
  const name = page.getByLabel('Name', { exact: true }).first()
  await name.click()
  await page.keyboard.press('ControlOrMeta+A')
  await page.keyboard.type('second best')
  expect((await keptDesign(page)).wiring).toEqual({ series: ['second best', 'second'] })
  expect(await page.locator('.driver h3').first().textContent()).toBe('second best')
  await page.getByRole('button', { name: 'Remove second best' }).waitFor()
  await context.close()
})

it('what the form has no field for is told by its own name and can be left out', async () => {
  const { page, context, complaints } = await visit(browser, service.address)
  await showExample(page)
  const draft = await keptDesign(page)
  await page.goto(service.address + linkTo({ ...draft, box: { ...draft.box, grain: 'sideways' } }))
  await page.getByText('Something is not understood').waitFor()
  expect(await page.locator('form .wrong').count()).toBe(0)
  await drawn(page, () => press(page, 'Leave out /box/grain'))
  expect((await keptDesign(page)).box.grain).toBeUndefined()
  expect(complaints).toEqual([])
  await context.close()
})

it.each([
  ['another kind of file', { name: 'page', version: '1.0' }],
  ['a wiring nested beyond reason', { boxes: 1, wiring: 9000 }],
])('%s is no design, and the page works on', async (_name, content) => {
  const { page, context, complaints } = await visit(browser, service.address)
  await showExample(page)
  const deep = `${'{"series":['.repeat(9000)}"main"${']}'.repeat(9000)}`
  const text = JSON.stringify(content).replace('9000', deep)
  await page
    .locator('#file')
    .setInputFiles({ name: 'odd.json', mimeType: 'application/json', buffer: Buffer.from(text) })
  await page.getByText('odd.json holds no design').waitFor()
  await drawn(page, () => height(page).fill('232'))
  expect(complaints).toEqual([])
  await context.close()
})
