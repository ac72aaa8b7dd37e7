import { finished, Readable } from 'node:stream'
import { setImmediate as others } from 'node:timers/promises'
import type { FastifyInstance, FastifyReply, FastifyRequest } from 'fastify'
import type { Fault } from '../core/outcome.ts'
import type { DecimalMark } from '../core/quantity.ts'
import { csvRow, withoutGuard } from '../views/csv.ts'
import { pick } from '../views/pick.ts'
import type { Frame } from './answer-frame.ts'
import { csvRows, type SheetRow, separatorOf } from './csv-rows.ts'
import { refuseOtherEncoding, refusePacked } from './json-body.ts'
import { notReadable, problemLine, Refused } from './problem.ts'
import type { Query } from './query-body.ts'

/** Rows of a sheet, each a request under the names that a query has too. */
export interface Batch {
  text: Buffer
  decimal: DecimalMark
  /** Paths of values of the answer, each a column more. */
  picks: readonly string[]
  answerTo: (fields: Query) => Promise<{ answer: Frame } | { faults: Fault[] }>
}

/** A column whose name begins so is the sheet's own: it is handed back and not read. */
const OWN_COLUMN = '#'

/** Columns that an answer brings, before those that were picked. */
const ANSWERED = ['verdict', 'answer', 'errors']

/** Enough for some ten thousand rows; they are held whole, their answers are not. */
const MOST_BYTES = 8 * 1024 * 1024
/** Some ten seconds of work where the rows are ports. */
const MOST_ROWS = 20_000
/** More than a calculation has names; every row of the answer repeats them all. */
const MOST_COLUMNS = 500
/** Each holds its rows until the last is answered and taken; of all that is what the process has room for. */
const MOST_OPEN = 8
/** Of one client, so that one whose sheets never arrive leaves room for the others. */
const MOST_OF_ONE = 4

/** The sheets on their way or being answered, each with the address of its client. */
const open = new Map<FastifyReply, string>()

/** Lets the routes of this scope take rows besides JSON. */
export function takeRows(app: FastifyInstance): void {
  app.addHook('preParsing', async (request, reply) => {
    if (isRows(request)) refuseOneTooMany(request.ip, reply)
  })
  const whole = { parseAs: 'buffer', bodyLimit: MOST_BYTES } as const
  app.addContentTypeParser('text/csv', whole, async (request: FastifyRequest, bytes: Buffer) => {
    refusePacked(request)
    refuseOtherEncoding(bytes)
    return bytes
  })
}

const isRows = ({ headers }: FastifyRequest): boolean =>
  /^\s*text\/csv\s*(;|$)/i.test(headers['content-type'] ?? '')

/** Before the body is read: it is the bodies that take the room. */
function refuseOneTooMany(client: string, reply: FastifyReply): void {
  const own = [...open.values()].filter((address) => address === client).length
  if (own >= MOST_OF_ONE) throw busy(`${own} sheets of rows of this client`)
  if (open.size >= MOST_OPEN) throw busy(`${open.size} sheets of rows`)
  open.set(reply, client)
  finished(reply.raw, () => open.delete(reply))
}

const busy = (sheets: string): Refused =>
  new Refused(
    'busy',
    `${sheets} are being received or answered, as many as there is room for. Try again in a few seconds.`,
  )

/** Rows are answered by rows and by nothing else. */
export function refuseOtherForms(request: FastifyRequest, format: string | undefined): void {
  const isWanted = format === undefined ? request.accepts().type(['text/csv']) !== false : format === 'csv'
  if (isWanted) return
  throw new Refused(
    'not-acceptable',
    'Rows are answered as rows: on offer is csv (text/csv) alone; ask by ?format= or by the Accept header, or send one request as JSON.',
  )
}

/** `?pick=` names several values here, parted by commas. */
export const picksOf = (options: Query): string[] =>
  [options['pick'] ?? []]
    .flat()
    .join(',')
    .split(',')
    .map((path) => path.trim())
    .filter((path) => path !== '')

/**
 * The rows handed back one by one as they are answered, with verdict, answer, errors and the values picked behind
 * their own cells. A row that cannot be read or computed says so in itself; the others are answered all the same.
 * Nothing is read or computed that the client does not take.
 */
export async function batchAnswers(batch: Batch): Promise<Readable> {
  await refuseMisfit(batch.text)
  return Readable.from(answeredRows(batch))
}

/** Looks through the rows before the first is answered, for an answer that has begun can no longer be refused. */
async function refuseMisfit(text: Buffer): Promise<void> {
  let count = -1
  for (const row of csvRows(text)) {
    if (row === 'pause') {
      await others()
      continue
    }
    const { cells, fault } = row
    count += 1
    if (count === 0 && fault !== undefined) throw notReadable(`The header cannot be read: ${fault}.`)
    if (count === 0 && cells.length > MOST_COLUMNS)
      throw tooLarge(`The header has ${cells.length} columns; up to ${MOST_COLUMNS} are taken.`)
    if (count > MOST_ROWS)
      throw tooLarge(`The sheet has more than ${MOST_ROWS} rows below its header; send it in parts.`)
  }
  if (count < 0) throw notReadable('The body is empty; send rows under a header.')
}

const tooLarge = (cause: string): Refused => new Refused('too-large', cause, [{ at: '', message: cause }])

async function* answeredRows(batch: Batch): AsyncGenerator<string> {
  const { text, decimal, picks } = batch
  const given = separatorOf(text)
  // A decimal comma would hide in a cell of its own quotes.
  const separator = decimal === 'comma' && given === ',' ? ';' : given
  let header: string[] | undefined
  let isGiven = (_column: number) => true
  for (const row of csvRows(text)) {
    if (row === 'pause') {
      await others()
      continue
    }
    if (header === undefined) {
      const names = row.cells.map((name) => name.trim())
      isGiven = givenColumns(names, picks)
      header = names.map((name, column) => (isGiven(column) ? name : ''))
      yield csvRow(
        [...header.filter((_, column) => isGiven(column)), ...ANSWERED, ...picks],
        decimal,
        separator,
      )
      continue
    }
    const told = await answered(batch, header, row)
    const cells = aligned(row.cells, header.length).filter((_, column) => isGiven(column))
    yield csvRow([...cells, ...told], decimal, separator)
    // A thousand rows are a few seconds of work: the requests of others come in between.
    await others()
  }
}

/** Whether a column is of the sheet itself: those of an earlier answer give way to those of the new one. */
function givenColumns(names: readonly string[], picks: readonly string[]): (column: number) => boolean {
  const answer = names.findIndex((_, column) => ANSWERED.every((name, i) => names[column + i] === name))
  if (answer < 0) return () => true
  return (column) =>
    column < answer || (column >= answer + ANSWERED.length && !picks.includes(names[column] ?? ''))
}

/** Verdict, answer, errors and the values picked. */
async function answered(
  batch: Batch,
  header: readonly string[],
  { cells, fault }: SheetRow,
): Promise<string[]> {
  const none = batch.picks.map(() => '')
  if (fault !== undefined) return ['', '', `error: ${fault}`, ...none]
  const extra = cells.length - header.length
  if (extra > 0) return ['', '', `error: the row has ${extra} more cells than the header`, ...none]
  const read = await batch.answerTo(fieldsOf(header, cells))
  if ('faults' in read) return ['', '', problemLine('', read.faults), ...none]
  const picked = batch.picks.map((path) => pick(read.answer, path, batch.decimal))
  const wrong = picked.flatMap((one) => ('fault' in one ? [one.fault] : []))
  return [
    read.answer.verdict,
    read.answer.answer,
    wrong.length === 0 ? '' : `error: ${wrong.join('; ')}`,
    ...picked.map((one) => ('text' in one ? one.text : '')),
  ]
}

/** A name that heads several columns holds all their texts, which the reader of queries then refuses. */
function fieldsOf(header: readonly string[], cells: readonly string[]): Query {
  const texts = new Map<string, string[]>()
  for (const [column, name] of header.entries()) {
    if (name === '' || name.startsWith(OWN_COLUMN)) continue
    const text = withoutGuard((cells[column] ?? '').trim())
    const before = texts.get(name)
    if (before === undefined) texts.set(name, [text])
    else before.push(text)
  }
  return Object.fromEntries(texts)
}

/** As many cells as the header has. */
const aligned = (cells: readonly string[], length: number): string[] =>
  Array.from({ length }, (_, column) => cells[column] ?? '')
