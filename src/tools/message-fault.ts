import { ErrorCode } from '@modelcontextprotocol/sdk/types.js'
import { isRecord } from '../api/schema-node.ts'

/** An answer of JSON-RPC 2.0 to a message that cannot be done, with the status of HTTP that it is sent by. */
interface MessageFault {
  status: number
  jsonrpc: '2.0'
  id: string | number | null
  error: { code: ErrorCode; message: string }
}

/**
 * What is wrong with a message in ways that the library of the protocol does not tell in words, or lets pass: several
 * messages in one, which would multiply a few bytes into megabytes, or a call whose parameters are not of the right
 * kind. What else is wrong it tells itself.
 */
export function messageFault(body: unknown): MessageFault | undefined {
  if (Array.isArray(body))
    return fault(
      400,
      null,
      ErrorCode.InvalidRequest,
      'Send one message at a time: the protocol has no lists of messages since its revision of 2025-06-18.',
    )
  if (!isRecord(body) || body['method'] !== 'tools/call') return undefined
  const said = paramsFault(body['params'])
  // Without a usable name nobody waits for an answer.
  return said !== undefined && isId(body['id'])
    ? fault(200, body['id'], ErrorCode.InvalidParams, said)
    : undefined
}

function paramsFault(params: unknown): string | undefined {
  if (!isRecord(params) || typeof params['name'] !== 'string')
    return 'params must be an object with the name of a tool, such as {"name": "port", "arguments": {}}.'
  const given = params['arguments']
  if (given === undefined || isRecord(given)) return undefined
  return `arguments must be an object with the fields of the tool, is ${kindOf(given)}.`
}

const isId = (id: unknown): id is string | number => typeof id === 'string' || Number.isInteger(id)

const kindOf = (value: unknown): string =>
  value === null ? 'null' : Array.isArray(value) ? 'a list' : `a ${typeof value}`

const fault = (status: number, id: MessageFault['id'], code: ErrorCode, message: string): MessageFault => ({
  status,
  jsonrpc: '2.0',
  id,
  error: { code, message },
})
