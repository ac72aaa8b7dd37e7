import { Readable } from 'node:stream'
import { setImmediate as others } from 'node:timers/promises'
import { CsvError, parse } from 'csv-parse'
import type { FastifyInstance, FastifyRequest } from 'fastify'
import type { Fault } from '../core/outcome.ts'
import type { DecimalMark } from '../core/quantity.ts'
import { csvRow } from '../views/csv.ts'
import { pick } from '../views/pick.ts'
import type { Frame } from './answer-frame.ts'
import { refusePacked } from './json-body.ts'
import { problemLine } from './problem.ts'
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
const LONGEST_ROW = 64 * 1024
const BYTES_FOR_SEPARATOR = 4096

/** Enough for some ten thousand rows; they are held whole, their answers are not. */
const MOST_BYTES = 8 * 1024 * 1024

/** Lets the routes of this scope take rows besides JSON. */
export function takeRows(app: FastifyInstance): void {
  const whole = { parseAs: 'buffer', bodyLimit: MOST_BYTES } as const
  app.addContentTypeParser('text/csv', whole, async (request: FastifyRequest, bytes: Buffer) => {
    refusePacked(request)
    return bytes
  })
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
 */
export function batchAnswers(batch: Batch): Readable {
  return Readable.from(answeredRows(batch))
}

async function* answeredRows(batch: Batch): AsyncGenerator<string> {
  const { text, decimal, picks } = batch
  let header: string[] | undefined
  try {
    for await (const cells of rowsOf(text)) {
      if (header === undefined) {
        header = cells.map((name) => name.trim())
        yield csvRow([...header, 'verdict', 'answer', 'errors', ...picks], decimal)
        continue
      }
      yield csvRow([...aligned(cells, header.length), ...(await answered(batch, header, cells))], decimal)
      // A thousand rows are a few seconds of work: the requests of others come in between.
      await others()
    }
  } catch (error) {
    const cause = error instanceof CsvError ? error.message : 'the rows cannot be read'
    yield csvRow([...aligned([], header?.length ?? 0), '', '', `error: ${cause}`], decimal)
  }
}

function rowsOf(text: Buffer): AsyncIterable<string[]> {
  return Readable.from([text]).pipe(
    parse({
      bom: true,
      delimiter: separatorOf(text),
      relax_column_count: true,
      skip_empty_lines: true,
      max_record_size: LONGEST_ROW,
    }),
  )
}

/** The separator that the first line has most of. */
function separatorOf(text: Buffer): string {
  const [line = ''] = text.subarray(0, BYTES_FOR_SEPARATOR).toString().split(/\r?\n/, 1)
  const count = (mark: string) => line.split(mark).length
  return [',', ';', '\t'].reduce((most, mark) => (count(mark) > count(most) ? mark : most))
}

/** Verdict, answer, errors and the values picked. */
async function answered(
  batch: Batch,
  header: readonly string[],
  cells: readonly string[],
): Promise<string[]> {
  const none = batch.picks.map(() => '')
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
    texts.set(name, [...(texts.get(name) ?? []), (cells[column] ?? '').trim()])
  }
  return Object.fromEntries(texts)
}

/** As many cells as the header has. */
const aligned = (cells: readonly string[], length: number): string[] =>
  Array.from({ length }, (_, column) => cells[column] ?? '')
