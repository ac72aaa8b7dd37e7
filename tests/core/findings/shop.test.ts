import { describe, expect, it } from 'vitest'
import { apply } from '../../../src/core/findings/rule.ts'
import { boardRules, shopFindings, shopRules } from '../../../src/core/findings/shop.ts'
import { braceClashRules, homelessRules } from '../../../src/core/findings/shop-fittings.ts'
import type { BoardFacts, ShopFacts } from '../../../src/core/shop/shop-facts.ts'

/** A box nothing is wrong with. */
const sound: ShopFacts = {
  thicknessMm: 12,
  grossVolumeL: 2.8,
  usualThicknessMm: 9,
  joint: 'butt',
  column: { shortMm: 0, overlapMm: 0, acrossMm: 0, acrossShortMm: 0, upright: true, smallRow: false },
  web: { webMm: 12, between: ['a', 'b'] },
  leastWebMm: 12,
  flange: { gapMm: 0, between: ['a', 'b'] },
  magnet: { at: '/drivers/0', id: 'a', behindMm: 10, depthMm: 38 },
  tube: { insideMm: 28, behindMm: 26, leastMm: 26, sideMm: 13, leastSideMm: 13 },
  bodies: { at: '/drivers/0', gapMm: 5, between: ['a', 'b'] },
  land: { id: 'a', holeMm: 66, landMm: 1.5 },
  cover: { id: 'b', coverMm: 3 },
  filed: null,
  noSaw: [],
  driverScrew: { lengthMm: 11, longestMm: 11, flangeMm: 3 },
  faceScrew: { edgeMm: 12, cornerMm: 25 },
  panelScrew: { diameterMm: 3, lengthMm: 30, thickestMm: 3, wantedMm: 30 },
  unscrewed: { edges: 0, of: 12, shortestMm: 140 },
  strip: { boughtMm: 13, slitsInto: 1, eachMm: 13 },
  duct: null,
  braceClashes: [],
  braceOutside: null,
  divider: null,
  homeless: [],
  backWeb: { at: '/box/fittings/0', webMm: 12, between: ['a', 'b'] },
  braceCross: null,
  depthClash: null,
  overWall: null,
  control: { bushMm: 7, leaveMm: 2, knobMm: 8 },
  ringing: { id: 'side', sidesMm: [216, 136], supportedHz: 250, clampedHz: 500 },
  laminate: null,
  unmeasured: [],
  radiator: false,
}

const codes = (facts: ShopFacts) => shopFindings(facts).map(({ code }) => code)

it('a box just inside every limit of the shop reference has no finding', () => {
  expect(codes(sound)).toEqual([])
})

/** A slot on the floor between two cheeks of 12 mm. */
const duct: NonNullable<ShopFacts['duct']> = {
  slots: 1,
  onFloor: true,
  widthMm: 60,
  heightMm: 15,
  lengthMm: 48,
  shelvesEach: 1,
  cheeksEach: 2,
  cheekHeightMm: 27,
  besideMm: 12,
}

/** Limits of the shop reference, section 11, and of the sections it sums up: just outside. */
const OUTSIDE: [string, string, Partial<ShopFacts>][] = [
  ['holes-longer-than-front', 'blocker', { column: { ...sound.column, shortMm: 40, overlapMm: 0.1 } }],
  ['hole-wider-than-opening', 'blocker', { column: { ...sound.column, acrossMm: 0.1 } }],
  ['web-breaks', 'blocker', { web: { webMm: 2.9, between: ['a', 'b'] } }],
  ['web-thin', 'warning', { web: { webMm: 3, between: ['a', 'b'] } }],
  ['web-thin', 'warning', { web: { webMm: 11.9, between: ['a', 'b'] } }],
  ['flanges-overlap', 'blocker', { flange: { gapMm: -0.1, between: ['a', 'b'] } }],
  ['magnet-near-back', 'warning', { magnet: { at: '/drivers/0', id: 'a', behindMm: 9.9, depthMm: 38 } }],
  ['magnet-near-back', 'warning', { magnet: { at: '/drivers/0', id: 'a', behindMm: 0, depthMm: 38 } }],
  ['magnet-hits-back', 'blocker', { magnet: { at: '/drivers/0', id: 'a', behindMm: -0.1, depthMm: 38 } }],
  ['tube-near-back', 'warning', { tube: { ...sound.tube!, behindMm: 25.9 } }],
  ['tube-near-back', 'warning', { tube: { ...sound.tube!, behindMm: 0.1 } }],
  ['tube-hits-back', 'blocker', { tube: { ...sound.tube!, behindMm: 0 } }],
  ['tube-hits-back', 'blocker', { tube: { ...sound.tube!, behindMm: -0.1 } }],
  ['tube-near-side', 'warning', { tube: { ...sound.tube!, sideMm: 12.9 } }],
  ['bodies-close', 'warning', { bodies: { at: '/drivers/0', gapMm: 4.9, between: ['a', 'b'] } }],
  ['bodies-close', 'warning', { bodies: { at: '/drivers/0', gapMm: 0, between: ['a', 'b'] } }],
  [
    'brace-hits-body',
    'blocker',
    { braceClashes: [{ at: '/box/braces/0', brace: 'brace', body: 'a', shortMm: 0.1 }] },
  ],
  [
    'brace-outside-box',
    'blocker',
    { braceOutside: { at: '/box/braces/0/atMm', id: 'brace', overMm: 0.1, sideMm: 96 } },
  ],
  ['divider-parts-the-air', 'warning', { divider: '/box/braces/0' }],
  [
    'back-holes-do-not-fit',
    'blocker',
    { homeless: [{ id: 'a', at: '/passiveRadiator', shortMm: 0.1, growMm: 0.1, along: 'height' }] },
  ],
  ['back-web-breaks', 'blocker', { backWeb: { at: '/box', webMm: 2.9, between: ['a', 'b'] } }],
  ['back-web-thin', 'warning', { backWeb: { at: '/box', webMm: 3, between: ['a', 'b'] } }],
  ['back-web-thin', 'warning', { backWeb: { at: '/box', webMm: 11.9, between: ['a', 'b'] } }],
  ['meets-in-depth', 'blocker', { depthClash: { at: '/box/fittings/0', between: ['a', 'b'], shortMm: 0.1 } }],
  ['hole-over-wall', 'blocker', { overWall: { at: '/box/holes/0', id: 'a on the front', overMm: 0.1 } }],
  ['braces-cross', 'note', { braceCross: { at: '/box/braces/1', ids: ['brace 1', 'brace 2'] } }],
  ['control-bush-short', 'warning', { control: { bushMm: 4, leaveMm: 1.9, knobMm: null } }],
  ['control-shaft-short', 'warning', { control: { bushMm: 7, leaveMm: 4.5, knobMm: 7.9 } }],
  ['panel-rings-low', 'note', { ringing: { ...sound.ringing!, supportedHz: 249 } }],
  ['glue-on-laminate', 'warning', { laminate: '/stock/0/laminated' }],
  ['bodies-collide', 'blocker', { bodies: { at: '/drivers/0', gapMm: -0.1, between: ['a', 'b'] } }],
  ['slot-duct-of-board', 'note', { duct }],
  ['saw-eats-screws', 'warning', { land: { ...sound.land!, landMm: 1.4 } }],
  ['flange-covers-little', 'warning', { cover: { ...sound.cover!, coverMm: 2.9 } }],
  ['hole-to-file', 'note', { filed: { id: 'a', fileMm: 1 } }],
  ['no-hole-saw', 'note', { noSaw: ['a'] }],
  ['screw-through', 'blocker', { driverScrew: { lengthMm: 11.1, longestMm: 11, flangeMm: 3 } }],
  ['face-screw-near-edge', 'warning', { faceScrew: { edgeMm: 11.9, cornerMm: 25 } }],
  ['face-screw-near-corner', 'warning', { faceScrew: { edgeMm: 12, cornerMm: 24.9 } }],
  ['edge-screw-too-thick', 'warning', { panelScrew: { ...sound.panelScrew!, diameterMm: 3.1 } }],
  ['edge-screws-in-thin-board', 'warning', { thicknessMm: 11.9 }],
  ['joint-screw-short', 'warning', { panelScrew: { ...sound.panelScrew!, lengthMm: 29.9 } }],
  ['edges-glued-only', 'note', { unscrewed: { edges: 4, of: 12, shortestMm: 136 } }],
  ['edging-without-spare', 'note', { strip: { boughtMm: 12.9, slitsInto: 1, eachMm: 12.9 } }],
  ['edging-without-spare', 'note', { strip: { boughtMm: 24, slitsInto: 2, eachMm: 12 } }],
  ['edging-too-narrow', 'blocker', { strip: { boughtMm: 11.9, slitsInto: 1, eachMm: 11.9 } }],
  ['board-thin-for-volume', 'note', { usualThicknessMm: 12.1 }],
  ['mitres-need-a-true-saw', 'note', { joint: 'mitre' }],
  ['driver-not-measured', 'warning', { unmeasured: ['main'] }],
  ['radiator-not-measured', 'warning', { radiator: true }],
]

describe('just outside a limit', () => {
  it.each(OUTSIDE)('%s is a %s', (code, severity, change) => {
    const found = shopFindings({ ...sound, ...change })
    expect(found.map((finding) => [finding.code, finding.severity])).toEqual([[code, severity]])
  })

  it('a slot without room for cheeks says so beside where its boards go', () => {
    const found = codes({ ...sound, duct: { ...duct, besideMm: 11.9, cheeksEach: 0 } })
    expect(found).toEqual(['slot-duct-of-board', 'no-room-for-cheeks'])
  })

  it('every rule has its row above', () => {
    const tried = new Set(['no-room-for-cheeks', ...OUTSIDE.map(([code]) => code)])
    const rules = [...shopRules, ...braceClashRules, ...homelessRules]
    expect(rules.map(({ code }) => code).filter((code) => !tried.has(code))).toEqual([])
  })
})

it('a thin screw in a thin board is told by the board: 2 mm in 10 mm', () => {
  const found = apply(shopRules, {
    ...sound,
    thicknessMm: 10,
    panelScrew: { diameterMm: 2, lengthMm: 30, thickestMm: 2.5, wantedMm: 22 },
  })
  expect(found.map(({ code, value, limit }) => [code, value, limit])).toEqual([
    ['edge-screws-in-thin-board', 10, 12],
  ])
})

describe('remedies that would help', () => {
  const remedies = (change: Partial<ShopFacts>, code: string) =>
    apply(shopRules, { ...sound, ...change })
      .find((finding) => finding.code === code)
      ?.remedies.join(' ') ?? ''

  it('a thin web wants a longer front by what is short, rounded up, and a control elsewhere', () => {
    const web = { webMm: 9, between: ['a', 'b'] as [string, string] }
    const column = { ...sound.column, shortMm: 14.01, smallRow: true }
    const said = remedies({ web, column }, 'web-thin')
    expect(said).toContain('14.1 mm longer')
    expect(said).toContain('control')
    expect(said).toContain('smaller driver or port')
    expect(said).not.toMatch(/layer/)
  })

  it('a web that is thin across wants a wider front, a higher one when the column lies', () => {
    const web = { webMm: 9, between: ['a', 'edge'] as [string, string] }
    const across = (upright: boolean) => ({ web, column: { ...sound.column, acrossShortMm: 6, upright } })
    expect(remedies(across(true), 'web-thin')).toContain('6 mm wider')
    expect(remedies(across(false), 'web-thin')).toContain('6 mm higher')
    expect(remedies(across(true), 'web-thin')).not.toMatch(/longer|control/)
  })

  it.each([
    // Board of 12 mm: 45 mm make three bands, 22 mm one, 11 mm none.
    [45, 4, 'into 3 bands only, 15 mm each'],
    [22, 2, 'Do not slit'],
    [11, 1, 'Buy a strip of 13 mm'],
  ])('a strip of %d mm in %d', (boughtMm, slitsInto, said) => {
    const strip = { boughtMm, slitsInto, eachMm: boughtMm / slitsInto }
    expect(remedies({ strip }, 'edging-too-narrow')).toContain(said)
    if (slitsInto === 1) expect(remedies({ strip }, 'edging-too-narrow')).not.toMatch(/[Ss]lit/)
  })
})

const enough: BoardFacts = {
  tooThick: [],
  tooLarge: [],
  leftOver: { ids: [], pieces: 0, boards: [] },
  hasBoards: true,
  areaM2: 0.3,
  narrowestMm: 60,
}

it('boards that yield everything have no finding', () => {
  expect(apply(boardRules, enough)).toEqual([])
})

const SHORT: [string, string, Partial<BoardFacts>][] = [
  ['no-board-of-thickness', 'blocker', { tooThick: ['side'] }],
  ['part-larger-than-board', 'blocker', { tooLarge: ['side'] }],
  [
    'boards-do-not-suffice',
    'blocker',
    { leftOver: { ids: ['side'], pieces: 1, boards: ['A further board.'] } },
  ],
  ['narrow-strips', 'note', { narrowestMm: 59.9 }],
  ['no-board-named', 'warning', { hasBoards: false }],
]

it.each(SHORT)('%s is a %s', (code, severity, change) => {
  const found = apply(boardRules, { ...enough, ...change })
  expect(found.map((finding) => [finding.code, finding.severity])).toEqual([[code, severity]])
})

it('codes are unique, every finding has a remedy, and its text no unknown', () => {
  const all = [
    ...OUTSIDE.flatMap(([, , change]) => shopFindings({ ...sound, ...change })),
    ...SHORT.flatMap(([, , change]) => apply(boardRules, { ...enough, ...change })),
  ]
  for (const { message, remedies, at } of all) {
    expect(remedies.length).toBeGreaterThan(0)
    expect([message, ...remedies].join(' ')).not.toMatch(/undefined|null|NaN|Infinity/)
    expect(at).toMatch(/^\//)
  }
  const rules = [...shopRules, ...boardRules].map(({ code }) => code)
  expect(new Set(rules).size).toBe(rules.length)
})
