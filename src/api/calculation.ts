import { setTimeout as delay } from 'node:timers/promises'
import type { FastifyPluginAsyncTypebox } from '@fastify/type-provider-typebox'
import type { FastifyReply, FastifyRequest } from 'fastify'
import { type Static, type TObject, type TProperties, type TSchema, Type } from 'typebox'
import { type Fault, isRefusal, type Outcome, type Refusal } from '../core/outcome.ts'
import type { Finding } from '../schema/frame.ts'
import { ref } from '../schema/shared.ts'
import { type Frame, framed } from './answer-frame.ts'
import { batchAnswers, picksOf, refuseOtherForms, takeRows } from './batch.ts'
import { tagged } from './entity-tag.ts'
import { flatParameters } from './flat-parameters.ts'
import { formsOf, type Views } from './forms.ts'
import { type Aside, goneSignal } from './heavy-work.ts'
import { invalidInput, notReadable, oneEach, Refused } from './problem.ts'
import { type Query, queryBody } from './query-body.ts'
import { bodyReader } from './read-body.ts'
import { represent, wantedForm } from './represent.ts'
import { answerSchema, responsesOf } from './responses.ts'
import { pointerTo } from './schema-node.ts'
import { tableShapes } from './table-shapes.ts'
import { decimalOf, viewOptionsReader } from './view-options.ts'

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
  /** Heavy work may be handed on, to be done beside the requests. */
  compute: (body: Static<Body>, aside: Aside) => Computed<Sections> | Promise<Computed<Sections>>
  /** One or two plain sentences, units included. */
  answer: (sections: Static<TObject<Sections>>, body: Static<Body>, findings: readonly Finding[]) => string
  /** Drawings and sheets; the sentence and the tables come by themselves. */
  views?: Views<Frame & Static<TObject<Sections>>, Static<Body>>
  /** Name of the table that `csv` gives when none is named. */
  mainTable: string
}

const ROWS_SAID =
  'One request a row, under a header of the names that a query has; columns whose name begins with # are handed back unread. The answer is the same rows, parted by the same mark, with verdict, answer, errors and the columns that ?pick= names (several parted by commas); those of an earlier answer give way. A cell that a sheet would run as a formula comes back behind an apostrophe, which is passed over when it is sent again'

type Computed<Sections extends TProperties> = Outcome<Static<TObject<Sections>>> | Refusal

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
  const { views = {}, mainTable } = given
  const forms = formsOf(views)
  const tables = mainFirst(tableShapes(answerSchema(given.sections)), mainTable)
  const viewOptions = viewOptionsReader({
    forms,
    tables: [...tables.keys()],
    pictures: Object.keys(views.svg ?? {}),
  })

  async function answered(body: Static<Body>, wantsWorking: boolean, aside: Aside) {
    const outcome = await given.compute(body, aside)
    if (isRefusal(outcome)) return outcome
    const sentence = given.answer(outcome.sections, body, outcome.findings)
    return { answer: await framed(outcome, { sentence, request: body, wantsWorking }) }
  }

  async function answerTo(asked: Asked, request: FastifyRequest, reply: FastifyReply) {
    // Beside what was said before of the origin.
    reply.header('vary', [reply.getHeader('vary') ?? [], 'accept'].flat().join(', '))
    const view = await viewOptions.read(asked.options)
    const read = await readBody(asked.sent, decimalOf(asked.options))
    if ('faults' in view || 'faults' in read || asked.faults.length > 0) {
      throw invalidInput([asked, view, read].flatMap((part) => ('faults' in part ? part.faults : [])))
    }
    const { body: options } = view
    const form = wantedForm(options, forms, request)
    const aside = asideOf(request, reply)
    const done = await answered(read.body, options.working === true, aside)
    if ('faults' in done) throw invalidInput(done.faults)
    const origin = `${request.protocol}://${request.host}`
    const shown = { answer: done.answer, body: read.body, options, aside, origin }
    return represent({ views, tables }, form, shown, reply)
  }

  /** Rows of a sheet: each is read as a query is, and answered in its own row. */
  async function answerRows(text: Buffer, query: Query, request: FastifyRequest, reply: FastifyReply) {
    const { options, fields } = viewOptions.split(query)
    const view = await viewOptions.read(options)
    const faults = [
      ...viewOptions.unknown(fields, FOR_ROWS),
      ...notForRows(options),
      ...('faults' in view ? view.faults : []),
    ]
    if (faults.length > 0) throw invalidInput(faults)
    refuseOtherForms(request, 'body' in view ? view.body.format : undefined)
    const decimal = decimalOf(options)
    const aside = asideOf(request, reply)
    const rows = await batchAnswers({
      text,
      decimal,
      picks: picksOf(options),
      answerTo: async (row) => {
        const { body: sent, faults } = queryBody(given.body, row, decimal)
        const read = await readBody(sent, decimal)
        if ('faults' in read || faults.length > 0)
          return { faults: oneEach([...faults, ...('faults' in read ? read.faults : [])]) }
        return answered(read.body, false, aside).catch((error: unknown) => toldInRow(error, request, reply))
      },
    })
    return reply.type('text/csv; charset=utf-8').send(rows)
  }

  return async (app) => {
    const { path, operationId, summary, description } = given
    app.addHook('onListen', () => readsSoon(readBody, given.example))
    const response = responsesOf(given.sections, forms)
    takeRows(app)
    app.post<{ Querystring: Query }>(
      path,
      {
        schema: {
          operationId,
          summary,
          description,
          body: {
            content: {
              'application/json': { schema: ref(given.body) },
              'text/csv': { schema: Type.String({ description: ROWS_SAID }) },
            },
          },
          querystring: viewOptions.schema,
          response,
          'x-example': given.example,
        },
      },
      (request, reply) => {
        if (request.body === undefined) throw notReadable('The body is empty; send it as JSON.')
        if (request.body instanceof Buffer) return answerRows(request.body, request.query, request, reply)
        const { options, fields } = viewOptions.split(request.query)
        return answerTo({ sent: request.body, options, faults: viewOptions.unknown(fields) }, request, reply)
      },
    )
    if (!given.get) return
    const fields = flatParameters(given.body, given.example)
    const querystring = Type.Object({ ...fields, ...viewOptions.properties })
    app.get<{ Querystring: Query }>(
      path,
      {
        schema: { operationId: `${operationId}ByQuery`, summary, description, querystring, response },
        onSend: tagged,
      },
      (request, reply) => {
        const { options, fields } = viewOptions.split(request.query)
        const { body, faults } = queryBody(given.body, fields, decimalOf(options))
        return answerTo({ sent: body, options, faults }, request, reply)
      },
    )
  }
}

const FOR_ROWS = ['format', 'pick', 'decimal', 'errors']

/** Wishes that rows cannot fulfil. */
const notForRows = (options: Query): Fault[] =>
  Object.keys(options)
    .filter((name) => !FOR_ROWS.includes(name))
    .map((name) => ({
      at: pointerTo('', name),
      message: `in the query is for a request of JSON; rows take ${FOR_ROWS.join(', ')}`,
    }))

const SOON_MS = 1000
const SPREAD_MS = 2000

/**
 * Reads the example when the first requests are through, so that nobody waits for the check to be compiled; at some
 * moment, so that the calculations do not all do so at once.
 */
async function readsSoon(read: (sent: unknown) => Promise<unknown>, example: unknown): Promise<void> {
  await delay(SOON_MS + SPREAD_MS * Math.random(), undefined, { ref: false })
  await read(structuredClone(example))
}

/** One signal a request, however many of its rows are heavy. */
function asideOf(request: FastifyRequest, reply: FastifyReply): Aside {
  let gone: AbortSignal | undefined
  const waiting = () => {
    gone ??= goneSignal(reply)
    return { client: request.ip, gone }
  }
  return { heavyWork: request.server.heavyWork, waiting }
}

/** A row that is refused, or that the service fails at, is told in the row; the others are answered all the same. */
function toldInRow(error: unknown, request: FastifyRequest, reply: FastifyReply): Refusal {
  if (error instanceof Refused) return { faults: [{ at: '', message: error.message }] }
  if (!reply.raw.destroyed) request.log.error({ err: error }, 'a mistake of ours')
  return { faults: [{ at: '', message: 'The service failed; nothing in the row has to change.' }] }
}

/** The tables with the usual one at their head. */
function mainFirst<Shape>(tables: ReadonlyMap<string, Shape>, main: string): ReadonlyMap<string, Shape> {
  const shape = tables.get(main)
  if (shape === undefined)
    throw new Error(`no table is called ${main}; there are ${[...tables.keys()].join(', ')}`)
  return new Map([[main, shape], ...tables])
}
