import { Client } from '@modelcontextprotocol/sdk/client/index.js'
import { StreamableHTTPClientTransport } from '@modelcontextprotocol/sdk/client/streamableHttp.js'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { afterAll, describe, expect, it } from 'vitest'
import { contractOf } from '../../src/api/contract.ts'
import { examplesOf } from '../api/contract-checks.ts'
import { buildApp } from '../held-app.ts'

const app = await buildApp()
const address = await app.listen({ host: '127.0.0.1', port: 0 })
const client = new Client({ name: 'test', version: '0' })
await client.connect(new StreamableHTTPClientTransport(new URL('/mcp', address)))
afterAll(async () => {
  await client.close()
  await app.close()
})

const contract = contractOf(app)
const CASES = examplesOf(contract).map(({ path, example }) => ({
  path,
  example: example as Record<string, unknown>,
  name: contract.paths[path]?.post?.operationId ?? '',
}))

const lines = (result: Awaited<ReturnType<typeof client.callTool>>): string[] =>
  (result.content as { text: string }[]).flatMap(({ text }) => text.split('\n'))

describe('the official client', () => {
  it('finds a tool for every calculation, in fixed order, read-only, with an example that fits', async () => {
    const { tools } = await client.listTools()
    expect(tools.map(({ name }) => name)).toEqual(CASES.map(({ name }) => name))
    for (const { name, description, inputSchema, annotations } of tools) {
      const { post } = Object.values(contract.paths).find((path) => path.post?.operationId === name) ?? {}
      expect(description).toBe(post?.description)
      expect(annotations).toMatchObject({ readOnlyHint: true, idempotentHint: true })
      const fits = new Ajv2020({ strict: false }).compile(inputSchema)
      expect(fits((inputSchema['examples'] as unknown[])[0]), JSON.stringify(fits.errors)).toBe(true)
    }
  })

  // The client itself holds structured content against the output schema, and throws when it does not fit.
  it.each(CASES)('calls $name and gets what POST $path answers', async ({ name, path, example }) => {
    const result = await client.callTool({ name, arguments: example })
    const posted = await app.inject({ method: 'POST', url: path, payload: example })
    expect(result.structuredContent).toEqual(posted.json())
    const [sentence, ...told] = lines(result)
    expect(sentence).toBe(posted.json().answer)
    const graver = posted.json().findings.filter((row: { severity: string }) => row.severity !== 'note')
    expect(told.filter((line) => /^(warning|blocker): /.test(line))).toHaveLength(graver.length)
  })

  it('is told every wrong argument by name, as a result a model can act on', async () => {
    const result = await client.callTool({
      name: 'port',
      arguments: { netVolumeL: -1, tuningHz: 'blue', x: 1 },
    })
    expect(result.isError).toBe(true)
    const told = lines(result).join('\n')
    for (const at of ['/netVolumeL', '/tuningHz', '/x']) expect(told).toContain(`${at}: `)
  })

  it('is told the names of the tools when it asks for another', async () => {
    const asked = client.callTool({ name: 'tune', arguments: {} })
    await expect(asked).rejects.toMatchObject({ code: -32602, message: expect.stringContaining('boxTuning') })
  })
})

describe('the address of the tools', () => {
  const post = (headers: Record<string, string>) =>
    app.inject({
      method: 'POST',
      url: '/mcp',
      headers: { accept: 'application/json, text/event-stream', ...headers },
      payload: { jsonrpc: '2.0', id: 1, method: 'ping' },
    })
  it.each(['GET', 'DELETE'] as const)(
    'does not take %s: there is no session to follow or end',
    async (method) => {
      const response = await app.inject({ method, url: '/mcp' })
      expect(response.statusCode).toBe(405)
      expect(response.headers['allow']).toContain('POST')
    },
  )
  it.each([
    { host: '127.0.0.1:8080', origin: 'http://evil.example', named: 'Origin' },
    { host: 'evil.example', named: 'evil.example' },
    { host: 'evil.example@localhost', named: 'Host' },
    { host: '127.0.0.1:8080', origin: 'null', named: 'Origin' },
    { host: '127.0.0.1:8080', origin: 'http://127.0.0.1:9999', named: 'Origin' },
  ])(
    'refuses a foreign site (specification 2025-11-25, Transports), and says why: %o',
    async ({ named, ...headers }) => {
      const response = await post(headers as Record<string, string>)
      expect(response.statusCode).toBe(403)
      expect(response.json().type).toBe('/problems/foreign-site')
      expect(response.json().detail).toContain(named)
    },
  )
  it.each([
    { host: 'localhost:8080' },
    { host: '[::1]:8080' },
    { host: '192.168.1.5:8080', origin: 'http://192.168.1.5:8080' },
  ])('answers its own site: %o', async (headers) => {
    expect((await post(headers as Record<string, string>)).statusCode).toBe(200)
  })
})

describe('a message that cannot be done', () => {
  const send = (message: unknown) => sendText(JSON.stringify(message))
  const sendText = (payload: string) =>
    app.inject({
      method: 'POST',
      url: '/mcp',
      headers: {
        host: 'localhost',
        'content-type': 'application/json',
        accept: 'application/json, text/event-stream',
      },
      payload,
    })
  const call = (params: unknown) => ({ jsonrpc: '2.0', id: 7, method: 'tools/call', params })

  it.each([0, 1, 100])(
    'is an Invalid Request in a list of %i: many would multiply a few bytes',
    async (count) => {
      // The Model Context Protocol has no batches since revision 2025-06-18; codes of JSON-RPC 2.0, section 5.1.
      const response = await send(Array(count).fill({ jsonrpc: '2.0', id: 1, method: 'tools/list' }))
      expect(response.statusCode).toBe(400)
      expect(response.json()).toMatchObject({ jsonrpc: '2.0', id: null, error: { code: -32600 } })
      expect(response.body.length).toBeLessThan(1000)
    },
  )
  it.each([
    [{ name: 'port', arguments: [1] }, 'a list'],
    [{ name: 'port', arguments: 'x' }, 'a string'],
    [{ name: 'port', arguments: null }, 'null'],
    [{ arguments: {} }, 'name'],
    [{ name: 5 }, 'name'],
    [undefined, 'name'],
  ])('has Invalid params, in words: %j', async (params, word) => {
    const { error, id } = (await send(call(params))).json()
    expect(id).toBe(7)
    expect(error.code).toBe(-32602)
    expect(error.message).toContain(word)
    expect(error.message).not.toMatch(/"code":|invalid_type/)
  })

  it('says where arguments lie too deep, deeper than JSON can be written again', async () => {
    const deep = '['.repeat(50_000) + ']'.repeat(50_000)
    const response = await sendText(
      JSON.stringify(call({ name: 'port', arguments: { a: 1 } })).replace('"a":1', `"a":${deep}`),
    )
    const { result } = response.json()
    expect(result.isError).toBe(true)
    expect(result.content[0].text).toMatch(/^\/a\/0.*lies deeper than 32 levels/)
  })
})

describe('the plain function definitions', () => {
  it('are the same tools, each with a schema that its example fits', async () => {
    const definitions = (await app.inject('/v1/tools')).json()
    expect(definitions.map((row: { function: { name: string } }) => row.function.name)).toEqual(
      CASES.map(({ name }) => name),
    )
    for (const [index, { request, ...row }] of definitions.entries()) {
      expect(request).toEqual({ method: 'POST', path: CASES[index]?.path })
      const fits = new Ajv2020({ strict: false }).compile(row.function.parameters)
      expect(fits(CASES[index]?.example), JSON.stringify(fits.errors)).toBe(true)
    }
  })
})
