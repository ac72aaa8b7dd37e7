import { connect } from 'node:net'
import { parse } from 'csv-parse/sync'
import { Type } from 'typebox'
import { afterAll, describe, expect, it } from 'vitest'
import { calculation } from '../../src/api/calculation.ts'
import { buildApp } from '../../src/app.ts'
import { share } from '../../src/schema/shared.ts'

const app = await buildApp()

/** A calculation for these tests alone: it counts how often it was asked. */
let counted = 0
const Count = share('Count', Type.Object({ n: Type.Number() }, { additionalProperties: false }))
await app.register(
  calculation({
    path: '/v1/test-count',
    operationId: 'testCount',
    summary: 'Counts',
    description: 'For the tests alone.',
    body: Count,
    sections: { count: Type.Object({ n: Type.Number() }) },
    example: { n: 1 },
    get: false,
    mainTable: 'values',
    compute: ({ n }) => {
      counted += n
      return { sections: { count: { n: counted } }, findings: [], assumptions: [], cautions: [], working: [] }
    },
    answer: () => 'Counted.',
  }),
)

/** A number that grows, once it has stopped growing. */
async function settled(read: () => number): Promise<number> {
  for (let before = -1; before !== read(); ) {
    before = read()
    await new Promise((resolve) => setTimeout(resolve, 100))
  }
  return read()
}

const address = new URL(await app.listen({ host: '127.0.0.1', port: 0 }))
afterAll(() => app.close())

const post = (payload: string | Buffer, query = '') =>
  app.inject({
    method: 'POST',
    url: `/v1/port${query}`,
    headers: { 'content-type': 'text/csv' },
    payload,
  })

/** The rows of an answer as objects, read by a reader that is not ours. */
async function rowsOf(payload: string | Buffer, query = ''): Promise<Record<string, string>[]> {
  const response = await post(payload, query)
  expect(response.statusCode).toBe(200)
  expect(response.headers['content-type']).toBe('text/csv; charset=utf-8')
  return parse(response.body, { columns: true, delimiter: query.includes('comma') ? ';' : ',' })
}

const HEADER = '# shelf,netVolumeL,innerDiameterMm,tuningHz'

describe('rows of a sheet', () => {
  it('come back with what a GET of the same fields answers', async () => {
    const [row] = await rowsOf(`${HEADER}\r\nleft,4,30,80\r\n`, '?pick=port.lengthMm,verdict')
    const single = (await app.inject('/v1/port?netVolumeL=4&innerDiameterMm=30&tuningHz=80')).json()
    expect(row).toEqual({
      '# shelf': 'left',
      netVolumeL: '4',
      innerDiameterMm: '30',
      tuningHz: '80',
      verdict: single.verdict,
      answer: single.answer,
      errors: '',
      'port.lengthMm': String(single.port.lengthMm),
    })
  })

  it('say in themselves what is wrong with them; the others are answered', async () => {
    const rows = await rowsOf(
      [HEADER, 'half,4,30,', 'word,4,thirty,80', 'formula,=A1,30,80', 'long,4,30,80,9', 'fine,4,30,80'].join(
        '\n',
      ),
    )
    expect(rows.map(({ errors }) => errors)).toEqual([
      expect.stringMatching(/^error: .*tuningHz/),
      expect.stringMatching(/^error: \/innerDiameterMm .*thirty/),
      expect.stringMatching(/^error: \/netVolumeL /),
      expect.stringContaining('1 more cells than the header'),
      '',
    ])
    expect(rows.map(({ verdict }) => verdict === '')).toEqual([true, true, true, true, false])
    expect(rows.every(({ errors }) => !errors!.includes('\n'))).toBe(true)
  })

  it('take a decimal comma with semicolons, and answer in kind', async () => {
    const text = 'netVolumeL;innerDiameterMm;tuningHz\n4,5;30;80\n'
    const [row] = await rowsOf(text, '?decimal=comma&pick=port.lengthMm')
    const single = (await app.inject('/v1/port?netVolumeL=4.5&innerDiameterMm=30&tuningHz=80')).json()
    expect(row?.['netVolumeL']).toBe('4,5')
    expect(Number(row?.['port.lengthMm']?.replace(',', '.'))).toBe(single.port.lengthMm)
  })

  it('take tabs, a byte order mark, empty lines and names of nested fields', async () => {
    const text = '\uFEFFnetVolumeL\tslot.widthMm\tslot.heightMm\ttuningHz\n\n10\t60\t15\t60\n\n'
    const response = await post(text)
    const rows = parse(response.body, { columns: true, delimiter: '\t' }) as Record<string, string>[]
    expect(rows.map(({ errors, verdict }) => [errors, verdict !== ''])).toEqual([['', true]])
  })

  it.each([
    [',', ''],
    [';', ''],
    ['\t', ''],
    ['\t', '?decimal=comma'],
  ])('come back as they were parted, by %j%s, and can be sent again', async (mark, query) => {
    const header = 'netVolumeL,innerDiameterMm,tuningHz,air.temperatureC,#note'.replaceAll(',', mark)
    const sent = [header, ['2.2', '26', '95', '-5 degC', '-1.5e-3'].join(mark)]
    const first = (await post(sent.join('\n'), query)).body.trim().split('\r\n')
    expect(first.map((line) => line.split(mark).slice(0, 5).join(mark))).toEqual([
      header,
      ['2.2', '26', '95', "'-5 degC", '-1.5e-3'].join(mark),
    ])
    const again = first.map((line) => line.split(mark).slice(0, 5).join(mark)).join('\r\n')
    expect((await post(again, query)).body.trim().split('\r\n')).toEqual(first)
    expect(first[1]?.split(mark)[5]).not.toBe('')
    expect((await post(first.join('\r\n'), query)).body.trim().split('\r\n')).toEqual(first)
  })

  it('take no wish that only a request of JSON can have', async () => {
    const response = await post(`${HEADER}\na,4,30,80`, '?working=true&table=port')
    expect(response.statusCode).toBe(422)
    expect(response.json().errors.map(({ at }: { at: string }) => at)).toEqual(['/working', '/table'])
  })

  it('name an unknown column with the nearest known one, in every row', async () => {
    const [row] = await rowsOf('netVolumL,innerDiameterMm,tuningHz\n4,30,80\n')
    expect(row?.['errors']).toContain('netVolumeL')
  })

  it('offer the nearest names for an unknown pick', async () => {
    const [row] = await rowsOf(`${HEADER}\na,4,30,80`, '?pick=port.lenghtMm')
    expect(row?.['errors']).toContain('port.lengthMm')
  })

  it('with a broken quote say so in their own row, with their cells; all others are answered', async () => {
    const rows = await rowsOf(`${HEADER}\na,4,30,80\n"b,4,30,80\nc,4,30,80\n`)
    expect(
      rows.map((row) => [row['# shelf'], row['netVolumeL'], row['verdict'] !== '', row['errors']]),
    ).toEqual([
      ['a', '4', true, ''],
      ['"b', '4', false, 'error: the quote that opens cell 1 of the row is never closed'],
      ['c', '4', true, ''],
    ])
  })

  it('with an inch mark are rows like any other', async () => {
    const names = ['a', '5" two', '"5"" speaker" x', 'c']
    const lines = names.map((name, i) => `2.${i},26,95,${name}`)
    const rows = await rowsOf(['netVolumeL,innerDiameterMm,tuningHz,#n', ...lines].join('\n'))
    expect(rows.map((row) => [row['#n'], row['verdict'] !== '', row['errors']])).toEqual(
      names.map((name) => [name, true, '']),
    )
  })

  it('of which one is too long are answered all the same', async () => {
    const rows = await rowsOf(`${HEADER}\na,4,30,80\nb,"${'4'.repeat(70_000)}",30,80\nc,4,30,80\n`)
    expect(rows.map((row) => [row['# shelf'], row['verdict'] !== '', row['errors']])).toEqual([
      ['a', true, ''],
      ['b', false, 'error: the row is longer than 64 KiB'],
      ['c', true, ''],
    ])
  })

  it('are all answered before an unclosed quote at the end of thousands', async () => {
    const rows = await rowsOf(`${HEADER}\n${'a,4,30,80\n'.repeat(3000)}"b,4,30,80`)
    expect(rows.filter(({ errors, verdict }) => errors === '' && verdict !== '')).toHaveLength(3000)
    expect(rows.at(-1)?.['errors']).toContain('never closed')
  })

  it('without a row are a header', async () => {
    const { statusCode, body } = await post(HEADER)
    expect([statusCode, body]).toEqual([200, `${HEADER},verdict,answer,errors\r\n`])
  })

  it.each(['', '\n\n', '\uFEFF'])('without a header are refused: %j', async (text) => {
    const response = await post(text)
    expect(response.statusCode).toBe(400)
    expect(response.json()).toMatchObject({ type: '/problems/not-readable' })
    expect(response.json().detail).toMatch(/^The body is empty; send /)
  })

  it('in another encoding are refused, as JSON is', async () => {
    const latin = Buffer.from(`${HEADER}\nKüche,4,30,80\n`, 'latin1')
    const wide = Buffer.from(`\uFEFF${HEADER}\na,4,30,80\n`, 'utf16le')
    for (const text of [latin, wide]) {
      const response = await post(text)
      expect(response.statusCode).toBe(400)
      expect(response.json().detail).toMatch(/^The body is not text in UTF-8: character \d+ /)
    }
    expect((await post(latin)).json().detail).toContain(`character ${HEADER.length + 3} `)
  })

  it('come in no other form, and what is on offer is said', async () => {
    const text = `${HEADER}\na,4,30,80\n`
    const asked = (accept: string, query = '') =>
      app.inject({
        method: 'POST',
        url: `/v1/port${query}`,
        headers: { 'content-type': 'text/csv', accept },
        payload: text,
      })
    for (const response of [await post(text, '?format=json'), await asked('application/json')]) {
      expect(response.statusCode).toBe(406)
      expect(response.json()).toMatchObject({ type: '/problems/not-acceptable' })
      expect(response.json().detail).toContain('csv (text/csv)')
    }
    for (const response of [
      await post(text, '?format=csv'),
      await asked('application/json', '?format=csv'),
      await asked('text/csv'),
      await asked('text/*, application/json'),
      await asked('*/*', '?pick=verdict'),
    ])
      expect(response.statusCode).toBe(200)
  })

  it('refuse an option that is not known', async () => {
    expect((await post(HEADER, '?colour=red')).statusCode).toBe(422)
  })
})

describe('thousands of rows', () => {
  const line = 'a,4,30,80\n'

  it('are answered while other requests come in between', async () => {
    let isDone = false
    const many = post(`${HEADER}\n${line.repeat(5000)}`).finally(() => {
      isDone = true
    })
    await new Promise((resolve) => setTimeout(resolve, 50))
    expect((await app.inject('/health/live')).statusCode).toBe(200)
    expect(isDone).toBe(false)
    expect((await many).body.trimEnd().split('\r\n')).toHaveLength(5001)
  })

  it('end when the client hangs up, and the service goes on', async () => {
    const body = `n\n${'1\n'.repeat(20_000)}`
    const socket = connect(Number(address.port), address.hostname)
    socket.write(
      `POST /v1/test-count HTTP/1.1\r\nHost: ${address.host}\r\nContent-Type: text/csv\r\nContent-Length: ${body.length}\r\n\r\n${body}`,
    )
    await new Promise((resolve) => socket.once('data', resolve))
    socket.destroy()
    const after = await settled(() => counted)
    expect(after).toBeGreaterThan(0)
    expect(after).toBeLessThan(20_000)
    expect((await app.inject('/health/live')).statusCode).toBe(200)
  })
})
