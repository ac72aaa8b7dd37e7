import { readFile } from 'node:fs/promises'
import staticFiles from '@fastify/static'
import type { FastifyPluginAsync } from 'fastify'

export interface KioskOptions {
  /** Where the built page lies: `index.html`, and `assets/` with a hash in every name. */
  folder: string
}

const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "connect-src 'self'",
  'frame-src blob:',
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join('; ')

/** The touch page at `/`, from files alone: it asks no other host. */
export const kiosk: FastifyPluginAsync<KioskOptions> = async (app, { folder }) => {
  const page = await readFile(`${folder}/index.html`)
  await app.register(staticFiles, {
    root: `${folder}/assets`,
    prefix: '/kiosk/',
    index: false,
    decorateReply: false,
    immutable: true,
    maxAge: '365d',
    schemaHide: true,
  })
  app.get('/', { schema: { hide: true } }, (_request, reply) =>
    reply
      .header('content-security-policy', POLICY)
      .header('x-content-type-options', 'nosniff')
      .header('referrer-policy', 'no-referrer')
      .header('cache-control', 'no-cache')
      .type('text/html; charset=utf-8')
      .send(page),
  )
}
