import type { Page } from 'playwright-core'
import { describe, expect, it } from 'vitest'
import { drawn, keptDesign, linkTo, press, servedPage, showExample, visit } from './touch-page.ts'

const { service, browser } = await servedPage()

const inDialog = (page: Page, name: string) => page.getByRole('dialog').getByLabel(name, { exact: true })
const measure = (page: Page) => press(page, /^Measure or guess this driver/)

/** Magnitude in ohm of a driver in free air, R (1 + (Qms/Qes) / (1 + j Qms (f/fs - fs/f))); Small 1972, J. Audio Eng. Soc. 20. */
function readings({ fsHz, qms, qes }: { fsHz: number; qms: number; qes: number }, reOhm = 3.6): string {
  const wide = Array.from({ length: 30 }, (_, i) => 15 * 100 ** (i / 29))
  const near = Array.from({ length: 21 }, (_, i) => fsHz * 1.5 ** ((i - 10) / 10))
  return [...wide, ...near]
    .sort((a, b) => a - b)
    .map((hz) => {
      const x = qms * (hz / fsHz - fsHz / hz)
      const [re, im] = [1 + qms / qes / (1 + x * x), -((qms / qes) * x) / (1 + x * x)]
      return `${hz.toFixed(2)} ${(reOhm * Math.hypot(re, im)).toFixed(3)}`
    })
    .join('\n')
}
const FREE = { fsHz: 85, qms: 4, qes: 0.6 }
/** With as much again on the cone as it weighs: the resonance falls and the Qs rise by the root of two. */
const HEAVY = { fsHz: 85 / Math.SQRT2, qms: 4 * Math.SQRT2, qes: 0.6 * Math.SQRT2 }

describe('readings that something speaks against', () => {
  it('come in as a guess until they are measured without, so that nothing is called ready', async () => {
    const { page, context, complaints } = await visit(browser, service.address)
    await drawn(page, () => page.locator('#file').setInputFiles('tests/designs/closed-desk-box.json'))
    await measure(page)
    await page.getByText('I have readings').click()
    await inDialog(page, 'Readings in free air').fill(readings(FREE))
    await drawn(page, () => press(page, 'Use them as a guess'))
    expect((await keptDesign(page)).drivers[0]).toMatchObject({ guessed: true })
    expect((await keptDesign(page)).drivers[0].parameters.fsHz).toBeCloseTo(85, 0)
    expect(await page.locator('#verdict').getAttribute('data-kind')).not.toBe('ready')
    await measure(page)
    await inDialog(page, 'Weight stuck to the cone Mass')
      .or(inDialog(page, 'Weight stuck to the cone'))
      .fill('3')
    await inDialog(page, 'Readings with that weight').fill(readings(HEAVY))
    await drawn(page, () => press(page, 'Use these data'))
    const { drivers } = await keptDesign(page)
    expect(drivers[0].guessed).toBeUndefined()
    expect(drivers[0].parameters.mmsG).toBeCloseTo(3, 1)
    expect(complaints).toEqual([])
    await context.close()
  })

  it('are not believed where neither a meter nor a print says that they are ohm', async () => {
    const { page, context } = await visit(browser, service.address)
    await press(page, 'Begin with my parts')
    await measure(page)
    await inDialog(page, 'Diameter of the cone').fill('62')
    await page.getByText('I have readings').click()
    await inDialog(page, 'Readings in free air').fill(readings(FREE, 3.6 * 20))
    await page.getByText('Give the resistance on a meter too').waitFor()
    await press(page, 'Use them as a guess')
    expect((await keptDesign(page)).drivers[0].guessed).toBe(true)
    await context.close()
  })
})

it('a page put in the place of a sheet is neither saved nor printed', async () => {
  const { page, context, complaints } = await visit(browser, service.address)
  await showExample(page)
  await page.route(/format=(?:pdf|html)/, (route) =>
    route.fulfill({ status: 200, contentType: 'text/html', body: '<html>Welcome to this network</html>' }),
  )
  const saved: string[] = []
  page.on('download', (download) => saved.push(download.suggestedFilename()))
  for (const way of ['Save as PDF', 'Print build sheet']) {
    await press(page, way)
    await page.getByText('so there is no build sheet now').waitFor()
    await press(page, 'Close')
  }
  expect(saved).toEqual([])
  expect(await page.locator('iframe#sheet').count()).toBe(0)
  expect(complaints).toEqual([])
  await context.close()
})

it('what is measured for one design does not go into another that is opened meanwhile', async () => {
  const { page, context } = await visit(browser, service.address)
  await showExample(page)
  const other = await keptDesign(page)
  await measure(page)
  await page.getByRole('dialog').waitFor()
  await page.goto(service.address + linkTo({ ...other, name: 'another' }))
  await page.getByText('Undo brings back').waitFor()
  expect(await page.getByRole('dialog').count()).toBe(0)
  await context.close()
})

it('a new driver has a name of its own, not that of one that was taken out', async () => {
  const { page, context } = await visit(browser, service.address)
  await showExample(page)
  await press(page, 'Add another kind of driver')
  await press(page, 'Remove second')
  await press(page, 'Add another kind of driver')
  const { drivers } = await keptDesign(page)
  expect(drivers.map(({ id }: { id: string }) => id)).toEqual(['main', 'third'])
  await context.close()
})

it('a size that cannot be turned into another is left as it is, and that is said', async () => {
  const { page, context } = await visit(browser, service.address)
  await showExample(page)
  await page.getByLabel('Height', { exact: true }).fill('tall')
  await page.getByLabel('Inside measures').click()
  await page.getByText('These measures cannot be turned into others').waitFor()
  expect(await page.getByLabel('Outside measures').isChecked()).toBe(true)
  expect(await page.getByLabel('Height', { exact: true }).inputValue()).toBe('tall')
  await context.close()
})
