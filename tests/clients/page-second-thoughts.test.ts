import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { drawn, height, press, servedPage, showExample, visit } from './touch-page.ts'

const { service, browser } = await servedPage()

const hasFocus = (page: Page) =>
  page.evaluate(() => document.activeElement?.id || (document.activeElement?.textContent ?? ''))

describe('undo', () => {
  it('brings back what was here before a file or a link was opened', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    await drawn(page, () => height(page).fill('231'))
    await press(page, 'Copy link')
    const link = await page.getByLabel('Link to this design').inputValue()
    await drawn(page, () => page.locator('#file').setInputFiles('tests/designs/closed-desk-box.json'))
    expect(await height(page).inputValue()).not.toBe('231')
    await press(page, 'Undo')
    expect(await height(page).inputValue()).toBe('231')
    await height(page).fill('232')
    await page.goto(link)
    await page.getByText('Undo brings back').waitFor()
    expect(await height(page).inputValue()).toBe('231')
    await press(page, 'Undo')
    expect(await height(page).inputValue()).toBe('232')
    await context.close()
  })

  it('an example that was only looked at does not push out the design set aside', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    await height(page).fill('233')
    await press(page, 'Start over')
    await showExample(page)
    await press(page, 'Start over')
    await press(page, 'Bring back the last design')
    expect(await height(page).inputValue()).toBe('233')
    await context.close()
  })
})

describe('another choice', () => {
  it('of the kind of box is answered at once, and the tube is as it was when it comes back', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    const kind = page.getByLabel('What kind of box')
    await page.getByLabel('Tune the box to fb').fill('99')
    await drawn(page, () => kind.selectOption('closed'))
    expect(await page.locator('#faults').textContent()).toBe('')
    await kind.selectOption('passive-radiator')
    await drawn(page, () => kind.selectOption('vented'))
    expect(await page.getByLabel('Tune the box to fb').inputValue()).toBe('99')
    await context.close()
  })

  it('of a unit takes the place of one written behind the number', async () => {
    const { page, context } = await visit(browser, service.address)
    await showExample(page)
    const unit = page.getByLabel('Unit of Height')
    await height(page).fill('24 cm')
    expect(await unit.inputValue()).toBe('cm')
    await unit.selectOption('in')
    expect(await height(page).inputValue()).toBe('24')
    const kept = await page.evaluate(() => JSON.parse(localStorage.getItem('boxwright-design') ?? '{}'))
    expect(kept.box.outer.heightMm).toBe('24 in')
    await context.close()
  })
})

it('the focus stays at the button pressed, or goes to the heading beside it when the button is gone', async () => {
  const { page, context } = await visit(browser, service.address)
  await showExample(page)
  const byKey = async (name: string | RegExp) => {
    await page.getByRole('button', { name, exact: true }).first().focus()
    await page.keyboard.press('Enter')
  }
  await drawn(page, () => byKey('Add a board'))
  expect(await hasFocus(page)).toBe('Add a board')
  await drawn(page, () => byKey('Remove board 2'))
  expect(await hasFocus(page)).toBe('part-boards')
  await drawn(page, () => byKey(/^Do this/))
  expect(await hasFocus(page)).toBe('verdict-text')
  await context.close()
})

it('readings survive closing the dialog and a power cut; what was found from others is not on offer for them', async () => {
  const { page, context } = await visit(browser, service.address)
  await press(page, 'Begin with my parts')
  const dialog = page.getByRole('dialog')
  const guess = dialog.getByRole('button', { name: 'Use the guess for now' })
  const size = dialog.getByLabel('Diameter of the cone', { exact: true })
  await press(page, 'Measure or guess this driver')
  await size.fill('66')
  await dialog.getByLabel('Resistance on a meter Re', { exact: true }).fill('3.6')
  await guess.waitFor()
  await size.fill('wide')
  await guess.waitFor({ state: 'detached' })
  await size.fill('67')
  await page.keyboard.press('Escape')
  await page.reload()
  await press(page, 'Measure or guess this driver')
  expect(await size.inputValue()).toBe('67')
  await guess.waitFor()
  await context.close()
})

it('on a phone the sentence of the answer is on show, and one button leads there and back', async () => {
  const { page, context } = await visit(browser, service.address, 'phone')
  await showExample(page)
  await height(page).focus()
  const place = await page.evaluate(() => scrollY)
  await press(page, 'Show answer')
  await page.getByRole('button', { name: 'Back to parts' }).waitFor()
  const said = page.locator('#said')
  expect(await said.textContent()).toBe(await page.locator('#sentence').textContent())
  const box = await said.boundingBox()
  expect(box?.y).toBeGreaterThanOrEqual(-1)
  expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThan(780)
  await press(page, 'Back to parts')
  await page.getByRole('button', { name: 'Show answer' }).waitFor()
  expect(await page.evaluate(() => scrollY)).toBeCloseTo(place, -1)
  await context.close()
})
