import { readFileSync } from 'node:fs'
import { inflateRawSync } from 'node:zlib'
import { afterAll, describe, expect, it } from 'vitest'
import { buildApp } from '../../held-app.ts'

const app = await buildApp()
afterAll(() => app.close())
const DESIGN = JSON.parse(readFileSync(new URL('../../designs/shelf-pair.json', import.meta.url), 'utf8'))
const post = (query: string, payload: object = DESIGN) =>
  app.inject({ method: 'POST', url: `/v1/design-check${query}`, payload })
const answer = (await post('')).json()
const sheet = await post('?format=html')

/** What stands on the page, as text. */
const text = sheet.body
  .replace(/<style[\s\S]*?<\/style>/g, '')
  .replace(/<[^>]+>/g, ' ')
  .replace(/&#(\d+);/g, (_, code) => String.fromCharCode(Number(code)))
  .replace(/\s+/g, ' ')

/** Its steps: the pictures behind them repeat some cautions. */
const steps = text.slice(text.indexOf('Step by step'), text.indexOf('What a meter should show Test'))

describe('the build sheet', () => {
  it('comes as a page that asks no other host and runs no script', () => {
    expect(sheet.headers['content-type']).toBe('text/html; charset=utf-8')
    expect(sheet.headers['content-security-policy']).toContain("default-src 'none'")
    expect(sheet.body).not.toMatch(/<script|<link|<img|<iframe|@import|url\((?!#)/)
    // The one address in it is that of the service itself, behind the code.
    const addresses = sheet.body.match(/https?:\/\/(?!www\.w3\.org)[a-z0-9.-]+(:\d+)?/g) ?? []
    expect(new Set(addresses)).toEqual(new Set(['http://localhost:80']))
  })

  it('says the answer, every finding with its remedies, and every caution once', () => {
    expect(text).toContain(answer.answer)
    for (const { message, remedies } of answer.findings)
      for (const said of [message, ...remedies]) expect(text).toContain(said.replace(/\s+/g, ' '))
    for (const caution of answer.cautions) expect(steps.split(caution), caution).toHaveLength(2)
  })

  it('puts the caution at the step where it matters', () => {
    const at = (words: string) => steps.indexOf(words)
    const between = (words: string, step: string, next: string) => {
      expect(at(words), words).toBeGreaterThan(at(step))
      expect(at(words), words).toBeLessThan(at(next))
    }
    between('Soldering:', '5. Wire', '6. First power')
    between('First power: check the polarity', '6. First power', '7. Measure what was built')
    between('Sawing:', '1. Cut the panels', '2. Drill')
  })

  it('lists every panel, hole, cut, thing to buy and reading', () => {
    const names = [
      ...answer.panels.map(({ id }: { id: string }) => id),
      ...answer.panels.flatMap(({ holes }: { holes: { id: string }[] }) => holes.map(({ id }) => id)),
      ...answer.materials.map(({ item }: { item: string }) => item),
      ...answer.readings.map(({ test }: { test: string }) => test),
    ]
    for (const name of names) expect(text).toContain(name)
  })

  it('of a blocked design says so first', async () => {
    const blocked = await post('?format=html', {
      ...DESIGN,
      amplifier: { ...DESIGN.amplifier, minimumLoadOhm: 16 },
    })
    expect(blocked.body).toContain('class="verdict blocked">Do not build it like this')
  })

  it('keeps a name that would be markup as text', async () => {
    const named = await post('?format=html', { ...DESIGN, name: '<img src=x onerror=alert(1)>' })
    expect(named.body).not.toContain('<img')
  })

  it('leads back to the design, which travels in the link', () => {
    const link = /href="([^"]*#d=[\w-]+)"/.exec(sheet.body)?.[1] ?? ''
    const [origin, data = ''] = link.split('/#d=')
    expect(origin).toBe('http://localhost:80')
    expect(JSON.parse(inflateRawSync(Buffer.from(data, 'base64url')).toString())).toEqual(DESIGN)
  })

  it('says how to open the file of a design that is too long for a code', async () => {
    const stock = Array.from({ length: 50 }, (_, index) => ({
      id: `board ${(index * 7919) % 10007} ${(index * 104729) % 99991}`,
      lengthMm: 300 + ((index * 577) % 991),
      widthMm: 200 + ((index * 311) % 499),
      thicknessMm: 12,
    }))
    const long = await post('?format=html', { ...DESIGN, stock })
    expect(long.body).not.toContain('#d=')
    expect(long.body).toContain('too long for a code')
    expect(long.body).toContain('Open a saved design')
  })
})
