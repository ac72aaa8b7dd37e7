import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import type { FastifyReply, FastifyRequest } from 'fastify'
import { type Static, type TObject, type TProperties, type TSchema, Type } from 'typebox'
import { type Fault, isRefusal, type Outcome, type Refusal } from '../core/outcome.ts'
import type { Finding } from '../schema/frame.ts'
import { ref } from '../schema/shared.ts'
import { framed } from './answer-frame.ts'
import { flatParameters } from './flat-parameters.ts'
import { invalidInput, notReadable } from './problem.ts'
import { type Query, queryBody } from './query-body.ts'
import { bodyReader } from './read-body.ts'
import { represent, wantedForm } from './represent.ts'
import { responsesOf } from './responses.ts'
import { decimalOf, readViewOptions, splitQuery, unknownOptions, ViewOptions } from './view-options.ts'

/** All there is to say of a calculation; `compute` and `answer` must fit `body` and `sections`, or tsc refuses. */
export interface Calculation<Body extends TSchema, Sections extends TProperties> {
  path: `/v1/${string}`
  operationId: string
  summary: string
  /** Tells a bot when to use it and when another calculation is the right one. */
  description: string
  /** A shared schema. */
  body: Body
  sections: Sections
  /** A complete body that really runs; it stands in the contract. */
  example: Static<Body>
  /** true where the input is flat enough to type into a spreadsheet cell. */
  get: boolean
  compute: (body: Static<Body>) => Outcome<Static<TObject<Sections>>> | Refusal
  /** One or two plain sentences, units included. */
  answer: (sections: Static<TObject<Sections>>, body: Static<Body>, findings: readonly Finding[]) => string
}

/** What one request brings: the body as sent, what the query says of the answer, and faults found on the way. */
interface Asked {
  sent: unknown
  options: Query
  faults: Fault[]
}

/** The routes of a calculation: take, compute, frame. Registered on one line of `app.ts`. */
export function calculation<Body extends TSchema, Sections extends TProperties>(
  given: Calculation<Body, Sections>,
): FastifyPluginAsyncTypebox {
  const readBody = bodyReader(given.body)

  async function answerTo(asked: Asked, request: FastifyRequest, reply: FastifyReply) {
    reply.header('vary', 'accept')
    const view = await readViewOptions(asked.options)
    const read = await readBody(asked.sent, decimalOf(asked.options))
    if ('faults' in view || 'faults' in read || asked.faults.length > 0) {
      throw invalidInput([asked, view, read].flatMap((part) => ('faults' in part ? part.faults : [])))
    }
    const form = wantedForm(view.body, request)
    const outcome = given.compute(read.body)
    if (isRefusal(outcome)) throw invalidInput(outcome.faults)
    const sentence = given.answer(outcome.sections, read.body, outcome.findings)
    const wantsWorking = view.body.working === true
    const answer = await framed(outcome, { sentence, request: read.body, wantsWorking })
    return represent(answer, form, view.body, reply)
  }

  return async (app) => {
    const { path, operationId, summary, description } = given
    const response = responsesOf(given.sections)
    app.post<{ Querystring: Query }>(
      path,
      {
        schema: {
          operationId,
          summary,
          description,
          body: ref(given.body),
          querystring: ViewOptions,
          response,
          'x-example': given.example,
        },
      },
      (request, reply) => {
        if (request.body === undefined) throw notReadable('The body is empty; send it as JSON.')
        const { options, fields } = splitQuery(request.query)
        return answerTo({ sent: request.body, options, faults: unknownOptions(fields) }, request, reply)
      },
    )
    if (!given.get) return
    const fields = flatParameters(given.body, given.example)
    const querystring = Type.Object({ ...fields, ...ViewOptions.properties })
    app.get<{ Querystring: Query }>(
      path,
      { schema: { operationId: `${operationId}ByQuery`, summary, description, querystring, response } },
      (request, reply) => {
        const { options, fields } = splitQuery(request.query)
        const { body, faults } = queryBody(given.body, fields, decimalOf(options))
        return answerTo({ sent: body, options, faults }, request, reply)
      },
    )
  }
}
