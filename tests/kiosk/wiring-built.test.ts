import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import type { Draft } from '../../src/kiosk/browser/draft.ts'
import { fits, kindsOf } from '../../src/kiosk/browser/kinds.ts'
import { built } from '../../src/kiosk/browser/wiring-built.ts'
import { plansOf } from '../../src/kiosk/browser/wiring-plans.ts'
import { partsIn } from '../../src/kiosk/browser/wiring-tree.ts'
import { buildApp } from '../held-app.ts'

const app = await buildApp()
const staying = new AbortController().signal

/** The page asks this very service, without a wire between. */
beforeAll(() => {
  vi.stubGlobal('fetch', async (url: string, { body }: { body: string }) => {
    const { statusCode, body: text } = await app.inject({
      method: 'POST',
      url,
      headers: { 'content-type': 'application/json' },
      payload: body,
    })
    return new Response(text, { status: statusCode, headers: { 'x-request-id': 'one' } })
  })
})
afterAll(async () => {
  vi.unstubAllGlobals()
  await app.close()
})

const kind = fc.record({
  each: fc.integer({ min: 1, max: 5 }),
  reOhm: fc.double({ min: 2, max: 12, noNaN: true }),
  fsHz: fc.option(fc.integer({ min: 200, max: 3000 }), { nil: undefined }),
})

const designs = fc
  .record({
    kinds: fc.array(kind, { minLength: 1, maxLength: 8 }),
    boxes: fc.integer({ min: 1, max: 3 }),
    channelsPerBox: fc.integer({ min: 1, max: 2 }),
  })
  .map(({ kinds, boxes, channelsPerBox }): Draft => {
    const drivers = kinds.map(({ each, reOhm, fsHz }, index) => ({
      id: `d${index}`,
      count: each * channelsPerBox,
      ...(index > 0 && { sharesBox: false }),
      parameters: {
        reOhm,
        ...(index === 0
          ? { fsHz: 60, qes: 0.5, qms: 4, vasL: 12, sdCm2: 90, xmaxMm: 4 }
          : fsHz !== undefined && { fsHz }),
      },
    }))
    return {
      boxes,
      drivers,
      box: { kind: 'closed', netVolumeL: 60, panelThicknessMm: 12 },
      amplifier: { channels: boxes * channelsPerBox, supplyVoltageV: 12, minimumLoadOhm: 4 },
      supply: { kind: 'adapter' },
    }
  })

describe('every design of the form', () => {
  it('has ways to wire it that the service takes, with a load that the amplifier may drive among them', async () => {
    await fc.assert(
      fc.asyncProperty(designs, async (draft) => {
        const plans = plansOf(kindsOf(draft), draft, [])
        const done = await Promise.all(plans.map((plan) => built(plan, draft, staying)))
        for (const [index, { wiring, answer }] of done.entries()) {
          expect(fits(wiring, kindsOf(draft)), plans[index]?.text).toBe(true)
          expect(answer?.verdict, plans[index]?.text).toBeDefined()
        }
        const driven = done.filter(({ answer }) => answer?.load.mayDrive === true)
        expect(driven.length).toBeGreaterThan(0)
      }),
      { numRuns: 40, seed: 20 },
    )
  }, 60_000)

  it('has a crossover of the usual first order, each part for what hangs behind it', async () => {
    const amplifier = { channels: 1, supplyVoltageV: 12, minimumLoadOhm: 4 }
    const drivers = [
      { id: 'bass', parameters: { reOhm: 8 } },
      { id: 'treble', count: 2, sharesBox: false, parameters: { reOhm: 16 } },
    ]
    const draft = { drivers, amplifier }
    const [plan] = plansOf(kindsOf(draft), draft, [])
    if (plan === undefined) throw new Error('no plan')
    // L = R / (2 pi f) = 8 / (2 pi 2500) = 0.51 mH; two of 16 ohm in parallel: C = 1 / (2 pi f 8) = 7.96 uF, 8.2 in the series.
    const { wiring } = await built(plan, draft, staying)
    expect(partsIn(wiring)).toEqual(['0.51\u00a0mH coil', '8.2\u00a0µF capacitor'])
  })

  it('is told what is missing where it cannot be wired yet', async () => {
    const draft = {
      drivers: [
        { id: 'a', parameters: {} },
        { id: 'b', sharesBox: false, parameters: {} },
      ],
    }
    const [plan] = plansOf(kindsOf(draft), draft, [])
    if (plan === undefined) throw new Error('no plan')
    await expect(built(plan, draft, staying)).rejects.toThrow(/reOhm/)
  })

  it('is not wired at all while the service is too busy to judge it', async () => {
    const drivers = [{ id: 'a', count: 2, parameters: { reOhm: 8 } }]
    const draft = { drivers, amplifier: { channels: 1, supplyVoltageV: 12, minimumLoadOhm: 4 } }
    const [plan] = plansOf(kindsOf(draft), draft, [])
    if (plan === undefined) throw new Error('no plan')
    const asked = globalThis.fetch
    vi.stubGlobal('fetch', async (url: string, init: RequestInit) =>
      url === '/v1/design-check' ? new Response('', { status: 503 }) : asked(url, init),
    )
    await expect(built(plan, draft, staying)).rejects.toThrow(/busy/)
    vi.stubGlobal('fetch', asked)
  })
})
