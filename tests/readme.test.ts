import { readFileSync } from 'node:fs'
import { afterAll, describe, expect, it } from 'vitest'
import { buildApp } from './held-app.ts'

const README = readFileSync(new URL('../README.md', import.meta.url), 'utf8')
const app = await buildApp()
afterAll(() => app.close())

interface Call {
  line: string
  url: string
  file: string | undefined
  type: string
}

/** Every curl line of the README, as it stands there. */
const CALLS: Call[] = [...README.matchAll(/^curl .*$/gm)].map(([line]) => ({
  line,
  url: /http:\/\/127\.0\.0\.1:8080([^'\s]*)/.exec(line)?.[1] ?? '',
  file: /(?:-d|--data-binary) @(\S+)/.exec(line)?.[1],
  type: /content-type: ([\w/]+)/i.exec(line)?.[1] ?? 'application/json',
}))

const run = ({ url, file, type }: Call) =>
  file === undefined
    ? app.inject({ url })
    : app.inject({
        method: 'POST',
        url,
        headers: { 'content-type': type },
        payload: readFileSync(new URL(`../${file}`, import.meta.url), 'utf8'),
      })

describe('the calls of the README', () => {
  it('are there for a form, a cell and a bot', () => {
    expect(CALLS.length).toBeGreaterThanOrEqual(4)
  })
  it.each(CALLS)('$line', async (call) => {
    const response = await run(call)
    expect(response.statusCode).toBe(200)
    expect(response.body.length).toBeGreaterThan(0)
  })
})

it('the recorded answer is what the code answers', async () => {
  const block = /<!-- recorded: shelf-pair -->\n```json\n([\s\S]*?)\n```/.exec(README)?.[1] ?? ''
  const recorded = JSON.parse(block)
  const call = CALLS.find(({ url }) => url === '/v1/design-check')
  const answered = call === undefined ? {} : (await run(call)).json()
  expect(answered.answer).toBe(recorded.answer)
  expect(answered.verdict).toBe(recorded.verdict)
  expect(answered.findings[0].message).toBe(recorded.findings[0].message)
  for (const [name, value] of Object.entries(recorded.tuning))
    expect(answered.tuning[name] / Number(value), name).toBeCloseTo(1, 9)
})
