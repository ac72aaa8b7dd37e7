// Time from a key press to the drawn answer, verdict and pictures, in a real browser on the built page; the same key
// press in an empty page beside it, alternating, is what browser and driver themselves take.
import { chromium } from 'playwright-core'
import { serviceProcess } from './bench/service-process.mjs'

const presses = Number(process.argv[2] ?? 60)
const service = await serviceProcess('dist/main.js', { environment: { RATE_LIMIT: '0' }, log: 'inherit' })
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
})

const page = await browser.newPage({ viewport: { width: 1920, height: 1080 } })
await page.goto(service.address)
await page.getByRole('button', { name: 'Show me an example' }).click()
await page.locator('body[data-drawn]').waitFor()
const height = page.getByLabel('Height', { exact: true })
await height.fill('24')

const bare = await browser.newPage()
await bare.setContent('<input id="bare" aria-label="Bare">')
const input = bare.getByLabel('Bare')

/** Measured inside the page, from the input event to the frame after the last picture is decoded. */
const watch = (target) =>
  target.evaluate(() => {
    globalThis.took = new Promise((done) => {
      addEventListener(
        'input',
        (event) => {
          const began = event.timeStamp
          const finish = () => requestAnimationFrame(() => done(performance.now() - began))
          if (document.getElementById('bare') !== null) return finish()
          new MutationObserver((_, observer) => {
            observer.disconnect()
            finish()
          }).observe(document.body, { attributeFilter: ['data-drawn'] })
        },
        { once: true },
      )
    })
  })

async function once(target, field, key) {
  await field.focus()
  await watch(target)
  await target.keyboard.press(key)
  return target.evaluate(() => globalThis.took)
}

const taken = { answer: [], bare: [] }
for (let i = 0; i < presses; i += 1) {
  await page.bringToFront()
  await height.fill('24')
  await page.waitForTimeout(300)
  taken.answer.push(await once(page, height, String(i % 10)))
  await bare.bringToFront()
  taken.bare.push(await once(bare, input, 'a'))
}
await browser.close()
await service.end()

const at = (times, share) =>
  [...times].sort((a, b) => a - b)[Math.floor(share * (times.length - 1))].toFixed(1)
for (const [name, times] of Object.entries(taken))
  console.log(`${name}: median ${at(times, 0.5)} ms, p90 ${at(times, 0.9)} ms of ${times.length} key presses`)
console.log(
  `goal: median of the answer at most 100 ms; ratio to a bare page ${(at(taken.answer, 0.5) / at(taken.bare, 0.5)).toFixed(1)}`,
)
