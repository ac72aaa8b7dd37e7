import { isUtf8 } from 'node:buffer'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { jsonFault } from './json-fault.ts'
import { notReadable, Refused } from './problem.ts'
import { repeatedName } from './repeated-name.ts'
import { isRecord, pointerTo } from './schema-node.ts'

const LONGEST_ECHO = 60

/** Bodies are JSON and nothing else; of one that cannot be read it is said what is wrong, and where. */
export function readJsonBodies(app: FastifyInstance): void {
  app.removeAllContentTypeParsers()
  app.addContentTypeParser(
    'application/json',
    { parseAs: 'buffer' },
    async (request: FastifyRequest, bytes: Buffer) => {
      refusePacked(request)
      return parsed(textOf(bytes))
    },
  )
}

/** Nothing is unpacked: a few bytes could hold millions, and no design needs it (RFC 9110, section 15.5.16). */
export function refusePacked({ headers }: FastifyRequest): void {
  const packed = headers['content-encoding'] ?? 'identity'
  if (packed.toLowerCase() === 'identity') return
  const cause = `The body is packed as ${packed.slice(0, LONGEST_ECHO)}; send it plain.`
  throw new Refused('not-json', cause, [{ at: '', message: cause }])
}

function textOf(bytes: Buffer): string {
  const text = plainText(bytes)
  if (text.trim() === '') throw notReadable('The body is empty; send it as JSON.')
  refuseOtherEncoding(bytes)
  return text
}

/** A zero byte stands in no JSON and no sheet, but in every text of two bytes a letter. */
export function refuseOtherEncoding(bytes: Buffer): void {
  if (isUtf8(bytes) && !bytes.includes(0)) return
  const text = plainText(bytes)
  const place = text.search(/[\uFFFD\0]/) + 1
  const found = text[place - 1] === '\0' ? 'is a zero byte' : 'is of another encoding'
  throw notReadable(`The body is not text in UTF-8: character ${place} ${found}.`)
}

const plainText = (bytes: Buffer): string => bytes.toString().replace(/^\uFEFF/, '')

function parsed(text: string): unknown {
  let sent: unknown
  try {
    sent = JSON.parse(text)
  } catch {
    throw notReadable(jsonFault(text))
  }
  const member = COULD_REACH.test(text) ? prototypeMember(sent) : undefined
  if (member !== undefined) {
    throw notReadable('A member of this name is not taken.', member.length > LONGEST_ECHO ? '' : member)
  }
  const repeated = repeatedName(text, sent)
  if (repeated !== undefined) {
    throw notReadable(
      'This name stands twice in one object; which of the two is meant?',
      repeated.length > LONGEST_ECHO ? '' : repeated,
    )
  }
  return sent
}

/** What has none of these, not even in disguise, need not be walked through. */
const COULD_REACH = /__proto__|constructor|\\u/

/** Pointer to a member that could reach a prototype; found without recursion, for nobody has looked yet how deep it goes. */
function prototypeMember(sent: unknown): string | undefined {
  const holders = [{ value: sent, at: '' }]
  for (const { value, at } of holders) {
    if (typeof value !== 'object' || value === null) continue
    for (const [name, member] of Object.entries(value)) {
      if (reachesPrototype(name, member)) return pointerTo(at, name)
      if (typeof member === 'object') holders.push({ value: member, at: pointerTo(at, name) })
    }
  }
  return undefined
}

const reachesPrototype = (name: string, member: unknown): boolean =>
  name === '__proto__' || (name === 'constructor' && isRecord(member) && Object.hasOwn(member, 'prototype'))
