import { createHash } from 'node:crypto'
import type { FastifyReply, FastifyRequest } from 'fastify'

/**
 * Tags an answer to GET or HEAD by its bytes, and answers 304 when the client has those already
 * (RFC 9110, Fielding, Nottingham and Reschke, 2022, sections 8.6, 8.8.3 and 13.1.2). An `onSend` hook of the route.
 */
export async function tagged(request: FastifyRequest, reply: FastifyReply, payload: unknown) {
  const isTagged = typeof payload === 'string' || payload instanceof Uint8Array
  if (reply.statusCode !== 200 || !isTagged) return payload
  const tag = `"${createHash('sha1').update(payload).digest('base64url')}"`
  reply.header('etag', tag).header('cache-control', 'no-cache')
  if (!names(request.headers['if-none-match'], tag)) return payload
  reply.code(304).removeHeader('content-type').removeHeader('content-length')
  // A length stated here has to be that of the 200, or none. The server itself takes the text of HEAD away, for its
  // length; of an empty text to GET it would state the length.
  return request.method === 'HEAD' ? payload : null
}

/** Weak comparison, as the RFC wants it of If-None-Match. */
function names(header: string | undefined, tag: string): boolean {
  const given = (header ?? '').split(',').map((item) => item.trim().replace(/^W\//, ''))
  return given.includes('*') || given.includes(tag)
}
