import type { Draft } from './draft.ts'
import { designFrom } from './file-design.ts'

const MARK = '#d='

/** Older browsers cannot. */
export const canPack = (): boolean => 'CompressionStream' in globalThis && 'DecompressionStream' in globalThis

/** The address that holds the whole design: UTF-8 JSON, raw deflate (RFC 1951), base64url (RFC 4648). */
export async function linkTo(draft: Draft, page: string): Promise<string> {
  const bytes = await through(
    new TextEncoder().encode(JSON.stringify(draft)),
    new CompressionStream('deflate-raw'),
  )
  const base64 = btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''))
  return `${page}${MARK}${base64.replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '')}`
}

/** A design of more than this is no design; a small link can unpack to any size. */
const MOST_BYTES = 1_000_000

/** The design in the part of an address after `#`: undefined when there is none, `broken` when it cannot be read. */
export async function draftInHash(hash: string): Promise<Draft | 'broken' | undefined> {
  if (!hash.startsWith(MARK)) return undefined
  try {
    const base64 = hash.slice(MARK.length).replaceAll('-', '+').replaceAll('_', '/')
    const packed = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0))
    const bytes = await through(packed, new DecompressionStream('deflate-raw'))
    return designFrom(new TextDecoder('utf-8', { fatal: true }).decode(bytes)) ?? 'broken'
  } catch {
    return 'broken'
  }
}

async function through(bytes: Uint8Array<ArrayBuffer>, stream: CompressionStream | DecompressionStream) {
  const reader = new Blob([bytes]).stream().pipeThrough(stream).getReader()
  const chunks: Uint8Array[] = []
  let length = 0
  for (let part = await reader.read(); !part.done; part = await reader.read()) {
    chunks.push(part.value)
    length += part.value.length
    if (length > MOST_BYTES) throw new Error('the design in the link is too long')
  }
  const whole = new Uint8Array(length)
  let at = 0
  for (const chunk of chunks) {
    whole.set(chunk, at)
    at += chunk.length
  }
  return whole
}
