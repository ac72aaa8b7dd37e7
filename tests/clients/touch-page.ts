import { type ChildProcess, execFileSync, spawn } from 'node:child_process'
import { once } from 'node:events'
import { createInterface } from 'node:readline'
import { fileURLToPath } from 'node:url'
import { deflateRawSync } from 'node:zlib'
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'
import { afterAll } from 'vitest'
import { builtService } from '../built.ts'

export const SCREENS = {
  phone: { width: 390, height: 844 },
  tablet: { width: 820, height: 1180 },
  kiosk: { width: 1920, height: 1080 },
} as const
export type Screen = keyof typeof SCREENS

/** The built service as a process of its own, with the touch page; ended by its process id. */
async function startService() {
  const built = await builtService()
  execFileSync('node', ['scripts/build-page.mjs', `${fileURLToPath(built.url)}page`])
  let child: ChildProcess | undefined
  async function start(port = 0): Promise<string> {
    child = spawn('node', [fileURLToPath(new URL('main.js', built.url))], {
      env: { ...process.env, PORT: String(port), HOST: '127.0.0.1' },
      stdio: ['ignore', 'pipe', 'inherit'],
    })
    if (child.stdout === null) throw new Error('the service says nothing')
    for await (const line of createInterface(child.stdout)) {
      const address = /listens on (\S+),/.exec(line)?.[1]
      if (address !== undefined) return address
    }
    throw new Error('the service did not start')
  }
  async function kill(): Promise<void> {
    if (child === undefined || child.exitCode !== null || child.signalCode !== null) return
    const gone = once(child, 'exit')
    child.kill('SIGKILL')
    await gone
  }
  return {
    address: await start(),
    kill,
    start,
    end: async () => {
      await kill()
      await built.remove()
    },
  }
}

export const startBrowser = (): Promise<Browser> =>
  chromium.launch({
    executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  })

/** Service and browser for the tests of one file, ended after the last of them. */
export async function servedPage() {
  const service = await startService()
  const browser = await startBrowser()
  afterAll(async () => {
    await browser.close()
    await service.end()
  })
  return { service, browser }
}

export interface Visit {
  page: Page
  context: BrowserContext
  /** Everything the page complained of or asked of another host; must stay empty. */
  complaints: string[]
}

/** A visitor of the page on one screen, with nothing in its memory. */
export async function visit(
  browser: Browser,
  address: string,
  screen: Screen = 'kiosk',
  more = {},
): Promise<Visit> {
  const context = await browser.newContext({
    viewport: SCREENS[screen],
    hasTouch: screen !== 'kiosk',
    ...more,
  })
  const page = await context.newPage()
  const complaints: string[] = []
  page.on('pageerror', (error) => complaints.push(String(error)))
  page.on('console', (message) => {
    // A request that does not fit is an answer like others to the page; the browser lists it all the same.
    if (message.type() === 'error' && !/status of 422/.test(message.text())) complaints.push(message.text())
  })
  page.on('request', (request) => {
    if (!request.url().startsWith(address) && !/^(blob|data):/.test(request.url()))
      complaints.push(request.url())
  })
  await page.goto(address)
  return { page, context, complaints }
}

/** Resolves when the answer to what was typed last is drawn, pictures included. */
export async function drawn(page: Page, act: () => Promise<unknown>): Promise<void> {
  const before = await page.evaluate(() => document.body.dataset['drawn'] ?? '0')
  await act()
  await page.waitForFunction((old) => (document.body.dataset['drawn'] ?? '0') !== old, before)
}

export const press = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole('button', { name, exact: true }).click()

export const showExample = (page: Page): Promise<void> => drawn(page, () => press(page, 'Show me an example'))

/** The height of the box, a field that every example shows. */
export const height = (page: Page) => page.getByLabel('Height', { exact: true })

export const linkTo = (design: unknown): string =>
  `/#d=${deflateRawSync(JSON.stringify(design)).toString('base64url')}`

/** The design as the page keeps it. */
export const keptDesign = (page: Page) =>
  page.evaluate(() => JSON.parse(localStorage.getItem('boxwright-design') ?? '{}'))
