import { isUtf8 } from 'node:buffer'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import { jsonFault } from './json-fault.ts'
import { notReadable } from './problem.ts'
import { isRecord, pointerTo } from './schema-node.ts'

const LONGEST_ECHO = 60

/** Bodies are JSON and nothing else; of one that cannot be read it is said what is wrong, and where. */
export function readJsonBodies(app: FastifyInstance): void {
  app.removeAllContentTypeParsers()
  app.addContentTypeParser(
    'application/json',
    { parseAs: 'buffer' },
    async (request: FastifyRequest, bytes: Buffer) => {
      const packed = request.headers['content-encoding'] ?? 'identity'
      if (packed !== 'identity') {
        throw notReadable(`The body is packed as ${packed.slice(0, LONGEST_ECHO)}; send it plain.`)
      }
      return parsed(textOf(bytes))
    },
  )
}

/** A zero byte stands in no JSON, but in every text of two bytes a letter. */
function textOf(bytes: Buffer): string {
  const text = bytes.toString().replace(/^\uFEFF/, '')
  if (text.trim() === '') throw notReadable('The body is empty; send it as JSON.')
  if (isUtf8(bytes) && !bytes.includes(0)) return text
  const place = text.search(/[\uFFFD\0]/) + 1
  throw notReadable(`The body is not text in UTF-8: character ${place} is of another encoding.`)
}

function parsed(text: string): unknown {
  let sent: unknown
  try {
    sent = JSON.parse(text)
  } catch {
    throw notReadable(jsonFault(text))
  }
  const member = prototypeMember(sent)
  if (member !== undefined) {
    throw notReadable('A member of this name is not taken.', member.length > LONGEST_ECHO ? '' : member)
  }
  return sent
}

/** Pointer to a member that could reach a prototype; found without recursion, for nobody has looked yet how deep it goes. */
function prototypeMember(sent: unknown): string | undefined {
  const holders = [{ value: sent, at: '' }]
  for (const { value, at } of holders) {
    const members = typeof value === 'object' && value !== null ? Object.entries(value) : []
    const reaching = members.find(([name, member]) => reachesPrototype(name, member))
    if (reaching !== undefined) return pointerTo(at, reaching[0])
    for (const [name, member] of members) holders.push({ value: member, at: pointerTo(at, name) })
  }
  return undefined
}

const reachesPrototype = (name: string, member: unknown): boolean =>
  name === '__proto__' || (name === 'constructor' && isRecord(member) && Object.hasOwn(member, 'prototype'))
