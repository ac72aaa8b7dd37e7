import { afterAll, describe, expect, it } from 'vitest'
import { buildApp } from '../held-app.ts'

const app = await buildApp()
afterAll(() => app.close())

const post = (payload: object) => app.inject({ method: 'POST', url: '/v1/cut-list', payload })

const BOARD = { id: 'offcut', lengthMm: 600, widthMm: 400, thicknessMm: 12, trimMm: 5 }
const SHELF = { id: 'shelf', lengthMm: 300, widthMm: 200, thicknessMm: 12, count: 2 }
const BOX = {
  kind: 'closed',
  outer: { widthMm: 120, heightMm: 240, depthMm: 160 },
  panelThicknessMm: 12,
}
const FRAME = { outerDiameterMm: 76, cutoutDiameterMm: 66, depthMm: 38 }
const RADIATOR = { fsHz: 40, qms: 8, vasL: 2, sdCm2: 30 }

const workshop = { kerfMm: 2.4 }
const order = (change: object) => ({ parts: [SHELF], stock: [BOARD], workshop, ...change })
const inBox = (change: object, more: object = {}) => ({ box: { ...BOX, ...change }, stock: [BOARD], ...more })

describe('what cannot be asked is a fault by name', () => {
  it.each([
    ['10,000 parts', order({ parts: Array(10).fill({ ...SHELF, count: 1000 }) }), '/parts', /10000 pieces/],
    ['201 kinds of part', order({ parts: Array(201).fill(SHELF) }), '/parts', /at most 200/],
    [
      'more of one part than a list takes',
      order({ parts: [{ ...SHELF, count: 10_000 }] }),
      '/parts/0/count',
      /1000/,
    ],
    [
      'a negative trim',
      order({ stock: [{ ...BOARD, trimMm: -5 }] }),
      '/stock/0/trimMm',
      /at least 0 mm, is -5/,
    ],
    ['a negative kerf', order({ workshop: { kerfMm: -1 } }), '/workshop/kerfMm', /at least 0 mm/],
    [
      'a part without width',
      order({ parts: [{ ...SHELF, widthMm: 0 }] }),
      '/parts/0/widthMm',
      /at least 0.5 mm/,
    ],
    ['an empty list of parts', order({ parts: [] }), '/parts', /at least 1/],
    ['effort far too large', order({ effort: { seconds: 1e9 } }), '/effort/seconds', /at most 30 s/],
    ['effort as text of an hour', order({ effort: { seconds: '1 h' } }), '/effort/seconds', /is 3600/],
    ['effort below nothing', order({ effort: { seconds: -1 } }), '/effort/seconds', /at least 0 s/],
    ['a kerf wider than any saw', order({ workshop: { kerfMm: 1000 } }), '/workshop/kerfMm', /at most 20 mm/],
    ['none of a board', order({ stock: [{ ...BOARD, count: 0 }] }), '/stock/0/count', /at least 1/],
    [
      'a board without length',
      order({ stock: [{ ...BOARD, lengthMm: 0 }] }),
      '/stock/0/lengthMm',
      /at least 1/,
    ],
    ['none of a part', order({ parts: [{ ...SHELF, count: 0 }] }), '/parts/0/count', /at least 1/],
    ['half a part', order({ parts: [{ ...SHELF, count: 1.5 }] }), '/parts/0/count', /whole number/],
    ...[
      'NaN',
      'Infinity',
      '-Infinity',
      '1e999',
      '',
      ' ',
      '12,5',
      '0x10',
      '3 kg',
      '-0',
      null,
      true,
      [300],
    ].map((lengthMm): [string, object, string, RegExp] => [
      `${JSON.stringify(lengthMm)} for a length`,
      order({ parts: [{ ...SHELF, lengthMm }] }),
      '/parts/0/lengthMm',
      /number|comma|unit|mass|at least 0.5 mm/,
    ]),
    ['two parts of one name', order({ parts: [SHELF, SHELF] }), '/parts/1/id', /ids must differ/],
    ['two boards of one name', order({ stock: [BOARD, BOARD] }), '/stock/1/id', /"offcut".*ids must differ/],
    ['no parts and no box', { stock: [BOARD] }, '/box', /give a box, or plain parts/],
    ['a box and parts', { ...order({}), box: BOX }, '/parts', /not both/],
    ['panels thicker than the box', inBox({ panelThicknessMm: 60 }), '/box/outer/widthMm', /no air/],
    ['a fitting without a hole', inBox({ fittings: [{ id: 'x' }] }), '/box/fittings/0', /give one of/],
    [
      'a hole for what is not there',
      inBox({ holes: [{ for: 'hifi', xMm: 1, yMm: 1 }] }),
      '/box/holes/0/for',
      /no hole is called/,
    ],
    ['braces told twice', inBox({ braceL: 1, braces: [{ lies: 'level' }] }), '/box/braceL', /described/],
    [
      'a brace that lies askew',
      inBox({ braces: [{ lies: 'askew' }] }),
      '/box/braces/0/lies',
      /must be one of/,
    ],
  ])('%s', async (_name, body, at, message) => {
    const response = await post(body)
    expect(response.statusCode).toBe(422)
    expect(response.json().errors).toContainEqual({ at, message: expect.stringMatching(message) })
  })
})

describe('what does not come out of the boards is listed with the board that would take it', () => {
  it.each([
    [
      'a part larger than any board',
      order({ parts: [{ ...SHELF, lengthMm: 700 }] }),
      'part-larger-than-board',
      2,
    ],
    [
      'a part against the grain',
      order({
        stock: [{ ...BOARD, widthMm: 290, grain: 'width' }],
        parts: [{ ...SHELF, grain: 'length' }],
      }),
      'part-larger-than-board',
      2,
    ],
    ['wrong thickness', order({ parts: [{ ...SHELF, thicknessMm: 18 }] }), 'no-board-of-thickness', 2],
    ['a board that is all trim', order({ stock: [{ ...BOARD, trimMm: 200 }] }), 'part-larger-than-board', 2],
    // Within the trim two stand turned in 590 x 390 mm; a third wants 604.8 mm.
    [
      'more parts than the boards yield',
      order({ parts: [{ ...SHELF, count: 5 }] }),
      'boards-do-not-suffice',
      3,
    ],
    // 600 x 400 mm is four times 300 x 200 mm only without kerf: two stand turned, a third wants 604.8 mm.
    [
      'a kerf where there is room for none',
      order({
        parts: [{ ...SHELF, count: 4 }],
        stock: [{ ...BOARD, trimMm: 0 }],
      }),
      'boards-do-not-suffice',
      2,
    ],
  ])('%s', async (_name, body, code, missing) => {
    const answer = (await post(body)).json()
    expect(answer.verdict).toBe('blocked')
    expect(answer.findings.map((finding: { code: string }) => finding.code)).toContain(code)
    const counts = answer.notPlaced.map(({ count }: { count: number }) => count)
    expect(counts.reduce((sum: number, count: number) => sum + count, 0)).toBe(missing)

    // With that very board on hand everything comes out.
    const [{ smallestBoardMm }] = answer.notPlaced
    const { thicknessMm } = body.parts[0]!
    const { trimMm } = body.stock[0]!
    const more = { ...smallestBoardMm, thicknessMm, trimMm, grain: 'length' }
    const again = (await post({ ...body, stock: [...body.stock, more] })).json()
    expect(again.notPlaced).toEqual([])
  })

  it('without any board each part is listed with the board that would take it', async () => {
    const answer = (await post(order({ stock: [] }))).json()
    expect(answer.sheets).toEqual([])
    // Two of 300 x 200 mm and a cut of 2.4 mm: in a row 602.4 x 200, 1205 cm2; one above the other 300 x 402.4, 1207.
    expect(answer.notPlaced).toEqual([
      { id: 'shelf', count: 2, smallestBoardMm: { lengthMm: 602.4, widthMm: 200 } },
    ])
    const [{ smallestBoardMm }] = answer.notPlaced
    expect((await post(order({ stock: [smallestBoardMm] }))).json().notPlaced).toEqual([])
  })

  it('two thousand pieces that fit no board are listed, not laid out', async () => {
    const huge = { ...SHELF, lengthMm: 20_000, widthMm: 20_000, count: 1000 }
    const answer = (await post(order({ parts: [huge, { ...huge, id: 'b' }] }))).json()
    expect(answer.notPlaced.map(({ id, count }: { id: string; count: number }) => [id, count])).toEqual([
      ['shelf', 1000],
      ['b', 1000],
    ])
    expect(answer.bound).toBeNull()
  })

  it('without kerf and trim a board is parted to the last millimetre', async () => {
    const body = order({
      parts: [{ ...SHELF, count: 4 }],
      stock: [{ ...BOARD, trimMm: 0 }],
      workshop: { kerfMm: 0 },
    })
    const answer = (await post(body)).json()
    expect(answer.notPlaced).toEqual([])
    expect(answer.usedAreaM2).toBeCloseTo(answer.stockAreaM2, 12)
    expect(answer.cuts).toHaveLength(3)
    expect(answer.largestOffcut).toBeNull()
  })

  it('2,000 pieces are answered whole', async () => {
    const answer = (
      await post(
        order({
          parts: [
            { ...SHELF, count: 1000 },
            { ...SHELF, id: 'b', count: 1000 },
          ],
        }),
      )
    ).json()
    const placed = answer.sheets.flatMap(({ parts }: { parts: object[] }) => parts).length
    const left = answer.notPlaced.reduce((sum: number, { count }: { count: number }) => sum + count, 0)
    expect(placed + left).toBe(2000)
  })
})

describe('a box with everything in it', () => {
  it('is answered by the contract, with what meets named', async () => {
    const response = await post({
      box: {
        ...BOX,
        kind: 'passive-radiator',
        grain: 'upright',
        braces: [{ lies: 'level' }],
        fittings: [
          { id: 'switch', holeDiameterMm: 12, depthMm: 20, xMm: 30, yMm: 200 },
          { id: 'amplifier', board: { widthMm: 60, heightMm: 40 }, depthMm: 110, xMm: 60, yMm: 120 },
        ],
      },
      drivers: [{ id: 'main', parameters: {}, frame: FRAME }],
      passiveRadiator: { ...RADIATOR, frame: { ...FRAME, depthMm: 20 } },
      signal: { volumeControl: { resistanceKohm: 50, shaftLengthMm: 10 } },
      stock: [BOARD],
    })
    expect(response.statusCode).toBe(200)
    const { findings, panels, hardware } = response.json()
    const codes = findings.map(({ code }: { code: string }) => code)
    expect(codes).toContain('brace-hits-body')
    expect(codes).toContain('control-shaft-short')
    // 110 mm from the back and 38 - 12 mm from the front just fill the 136 mm; the radiator lies beside them.
    expect(codes).not.toContain('meets-in-depth')
    expect(panels.map(({ id }: { id: string }) => id)).toContain('brace')
    expect(hardware.map(({ item }: { item: string }) => item)).toContain('two-core wire')
  })
})

it('saws are named in inches and centimetres too (1 in is 25.4 mm)', async () => {
  const drivers = [{ id: 'main', count: 1, frame: FRAME, parameters: { sdCm2: 30 } }]
  const withSaws = (holeSawsMm: unknown[]) =>
    post(inBox({}, { drivers, workshop: { ...workshop, holeSawsMm } }))
  const [plain, written] = await Promise.all([
    withSaws([63.5, 66, 35]),
    withSaws(['2 1/2 in', '6.6 cm', '35 mm']),
  ])
  expect(plain.statusCode, plain.body).toBe(200)
  expect(written.body).toBe(plain.body)
})
