import { deflateRawSync, inflateRawSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { draftInHash, linkTo } from '../../src/kiosk/browser/link.ts'

const design = { name: 'Regal für die Küche ½ ☕', boxes: 2, box: { kind: 'closed', netVolumeL: 2.5 } }
const packed = (text: string) => deflateRawSync(text).toString('base64url')

describe('a design in a link', () => {
  it('can be unpacked by others: base64url of raw deflate of the JSON', async () => {
    const link = await linkTo(design, 'http://bench.local:8080/')
    const [page, code = ''] = link.split('#d=')
    expect(page).toBe('http://bench.local:8080/')
    expect(JSON.parse(inflateRawSync(Buffer.from(code, 'base64url')).toString())).toEqual(design)
  })

  it('is read from what others packed', async () => {
    expect(await draftInHash(`#d=${packed(JSON.stringify(design))}`)).toEqual(design)
  })

  it.each([
    ['cut short', packed(JSON.stringify(design)).slice(0, 30)],
    ['no base64', '%%%'],
    ['no deflate', Buffer.from('hello').toString('base64url')],
    ['no JSON', packed('hello')],
    ['no design', packed('[1]')],
    ['a bomb', packed(' '.repeat(3_000_000))],
    ['nothing', ''],
  ])('is broken when it is %s', async (_name, code) => {
    expect(await draftInHash(`#d=${code}`)).toBe('broken')
  })

  it.each(['', '#', '#answer'])('is none in %j', async (hash) => {
    expect(await draftInHash(hash)).toBeUndefined()
  })
})
