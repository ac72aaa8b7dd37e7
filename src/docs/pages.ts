import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import type { FastifyReply, FastifyRequest } from 'fastify'
import { contractOf } from '../api/contract.ts'
import type { ContractDocument } from '../api/contract-document.ts'
import { PROBLEM_NAMES, problemPath } from '../api/problem.ts'
import { documentationPage } from './documentation-page.ts'
import { exampleSheet } from './example-sheet.ts'
import { problemPage } from './problem-page.ts'
import { style } from './style.ts'

const POLICY =
  "default-src 'none'; style-src 'self'; img-src data:; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

/** The pages for people and the contract for programs; none of them is an operation of the contract. */
export const pages: FastifyPluginAsyncTypebox = async (app) => {
  const shown = { schema: { hide: true } }
  let made: ContractDocument | undefined
  const contract = () => {
    made ??= contractOf(app)
    return made
  }

  app.get('/openapi.json', shown, (_request, reply) =>
    reply.type('application/json; charset=utf-8').send(contract()),
  )
  app.get('/docs/style.css', shown, (_request, reply) => reply.type('text/css; charset=utf-8').send(style))
  app.get('/docs', shown, (request, reply) =>
    sendPage(reply, documentationPage(contract(), originOf(request))),
  )
  app.get('/docs/example-sheet.fods', shown, (request, reply) =>
    reply
      .type('application/vnd.oasis.opendocument.spreadsheet-flat-xml')
      .header('content-disposition', 'attachment; filename="boxwright-example.fods"')
      .send(exampleSheet(originOf(request))),
  )
  for (const name of PROBLEM_NAMES) {
    app.get(problemPath(name), shown, (_request, reply) => sendPage(reply, problemPage(name)))
  }
}

const originOf = (request: FastifyRequest): string => `${request.protocol}://${request.host}`

const sendPage = (reply: FastifyReply, html: string) =>
  reply
    .header('content-security-policy', POLICY)
    .header('x-content-type-options', 'nosniff')
    .header('referrer-policy', 'no-referrer')
    .type('text/html; charset=utf-8')
    .send(html)
