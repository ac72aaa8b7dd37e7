import type { FastifyInstance } from 'fastify'
import type { Frame } from '../api/answer-frame.ts'
import { onBehalfOf } from '../api/heavy-work.ts'
import { sizeFault } from '../api/size-limits.ts'
import type { Fault } from '../core/outcome.ts'
import type { Problem } from '../schema/problem.ts'
import type { Called, Caller } from './protocol.ts'
import type { Tool } from './tool-list.ts'

/**
 * Calls a calculation as any client would, so that a bot gets the same answer and the same faults. It counts as a
 * request of the bot's own address: another one, where requests are limited. Heavy work ends when the bot goes away.
 */
export async function callTool(
  app: FastifyInstance,
  { path }: Tool,
  given: unknown,
  { address, requestId, signal }: Caller,
): Promise<Called> {
  const tooMuch = sizeFault(given)
  if (tooMuch !== undefined) return { faults: lineOf(tooMuch) }
  const response = await onBehalfOf(signal, () =>
    app.inject({
      method: 'POST',
      url: path,
      headers: {
        accept: 'application/json',
        'content-type': 'application/json',
        'x-request-id': requestId,
      },
      payload: JSON.stringify(given),
      remoteAddress: address,
    }),
  )
  if (response.statusCode !== 200) return { faults: faultsSaid(response.json<Problem>()) }
  const answer = response.json<Frame & Record<string, unknown>>()
  return { said: said(answer), answer }
}

/** The sentence, then what the maker should know, so that a model that reads text alone misses nothing that matters. */
function said({ answer, findings, cautions }: Frame): string {
  const told = findings
    .filter(({ severity }) => severity !== 'note')
    .map(({ severity, message, remedies }) => `${severity}: ${message} ${remedies[0] ?? ''}`.trim())
  return [answer, ...told, ...cautions.map((caution) => `caution: ${caution}`)].join('\n')
}

const faultsSaid = ({ title, detail, errors }: Problem): string =>
  [`${title}. ${detail}`, ...errors.map(lineOf)].join('\n')

const lineOf = ({ at, message }: Fault): string => `${at === '' ? 'the arguments' : at}: ${message}`
