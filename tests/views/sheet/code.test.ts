import { inflateRawSync } from 'node:zlib'
import jsqr from 'jsqr'
import { describe, expect, it } from 'vitest'
import { designLink } from '../../../src/views/design-link.ts'
import { type Code, codeOf, codeSideMm, QUIET_MODULES, runsOf } from '../../../src/views/sheet/code.ts'

const PX = 3

/** The code as a camera gets it, read by another program than the one that wrote it. */
function scanned(code: Code): string | undefined {
  const side = PX * Math.round(codeSideMm(code) / code.moduleMm)
  const pixels = new Uint8ClampedArray(4 * side * side).fill(255)
  for (const { x, y, length } of runsOf(code))
    for (let row = y * PX; row < (y + 1) * PX; row++)
      for (let column = x * PX; column < (x + length) * PX; column++)
        pixels.fill(0, 4 * (row * side + column), 4 * (row * side + column) + 3)
  return jsqr.default(pixels, side, side)?.data
}

const unpacked = (link: string): unknown =>
  JSON.parse(inflateRawSync(Buffer.from(link.split('#d=')[1] ?? '', 'base64url')).toString('utf8'))

describe('the link of a design', () => {
  const design = { name: 'Küche, 4 Ω ✂', drivers: [{ id: 'a', count: 2 }] }
  it('holds the whole design in the part of the address that no server gets', () => {
    const link = designLink('http://192.168.1.20:8080', design)
    expect(link).toMatch(/^http:\/\/192\.168\.1\.20:8080\/#d=[\w-]+$/)
    expect(unpacked(link)).toEqual(design)
  })

  // Three bytes stored as they are: a last block of kind 0, its length twice, then the text "{}" (RFC 1951, 3.2.4).
  it('is packed as the browser unpacks it', () => {
    expect(unpacked(`x#d=${Buffer.from([1, 2, 0, 253, 255, 0x7b, 0x7d]).toString('base64url')}`)).toEqual({})
  })
})

describe('the code', () => {
  it.each([10, 200, 660, 661, 1200, 1465])('of a link of %i signs is read by another program', (length) => {
    const link = `http://a.b/#d=${'Zy-3_q'.repeat(300)}`.slice(0, length)
    const code = codeOf(link)
    if (code === null) throw new Error('no code')
    expect(scanned(code)).toBe(link)
    // Modules of 0.4 mm and more are read from paper; the whole code has to leave room for words beside it.
    expect(code.moduleMm).toBeGreaterThanOrEqual(0.4)
    expect(codeSideMm(code)).toBeLessThanOrEqual(70)
  })

  it('has bare paper around it', () => {
    const code = codeOf('http://a.b/')
    const last = (code?.dark.length ?? 0) + QUIET_MODULES
    for (const { x, y, length } of runsOf(code!)) {
      expect(Math.min(x, y)).toBeGreaterThanOrEqual(4)
      expect(Math.max(x + length, y + 1)).toBeLessThanOrEqual(last)
    }
  })

  it('is left out for a link that is too long to be read from paper', () => {
    expect(codeOf('x'.repeat(1466))).toBeNull()
  })
})
