import type { IncomingMessage, ServerResponse } from 'node:http'
import { Server } from '@modelcontextprotocol/sdk/server/index.js'
import { StreamableHTTPServerTransport } from '@modelcontextprotocol/sdk/server/streamableHttp.js'
import {
  CallToolRequestSchema,
  type CallToolResult,
  ErrorCode,
  ListToolsRequestSchema,
  McpError,
} from '@modelcontextprotocol/sdk/types.js'
import { messageFault } from './message-fault.ts'
import type { Tool } from './tool-list.ts'

/** What a call of a tool came to: the answer, or what is wrong with the arguments in words a model can act on. */
export type Called = { said: string; answer: Record<string, unknown> } | { faults: string }

/** Who waits for the tool, the name of the request, and the signal that nobody waits any more. */
export interface Caller {
  address: string
  requestId: string
  signal: AbortSignal
}

export interface Toolbox {
  name: string
  version: string
  instructions: string
  tools: readonly Tool[]
  call: (tool: Tool, given: unknown, caller: Caller) => Promise<Called>
}

/** A calculation reads nothing but its arguments and changes nothing. */
const ANNOTATIONS = { readOnlyHint: true, idempotentHint: true, openWorldHint: false }

/**
 * One request of the Model Context Protocol (revision 2025-11-25, Streamable HTTP), answered without a session.
 * All that is of the protocol is in this file and `message-fault.ts`: a newer revision has no handshake.
 */
export async function answerToolRequest(
  box: Toolbox,
  { raw, body, ip, id }: { raw: IncomingMessage; body: unknown; ip: string; id: string },
  response: ServerResponse,
): Promise<void> {
  const fault = messageFault(body)
  if (fault !== undefined) {
    const { status, ...message } = fault
    response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(message))
    return
  }
  const gone = new AbortController()
  const server = serverOf(box, { address: ip, requestId: id, signal: gone.signal })
  const transport = new StreamableHTTPServerTransport({ enableJsonResponse: true })
  response.once('close', () => {
    gone.abort()
    void transport.close()
    void server.close()
  })
  await server.connect(transport)
  await transport.handleRequest(raw, response, body)
}

function serverOf({ name, version, instructions, tools, call }: Toolbox, caller: Caller): Server {
  const server = new Server({ name, version }, { capabilities: { tools: {} }, instructions })
  server.setRequestHandler(ListToolsRequestSchema, () => ({
    tools: tools.map(({ name, title, description, input, output }) => ({
      name,
      title,
      description,
      inputSchema: input,
      outputSchema: output,
      annotations: ANNOTATIONS,
    })),
  }))
  server.setRequestHandler(CallToolRequestSchema, async ({ params }): Promise<CallToolResult> => {
    const tool = tools.find(({ name }) => name === params.name)
    if (tool === undefined) throw new McpError(ErrorCode.InvalidParams, unknownTool(params.name, tools))
    const called = await call(tool, params.arguments ?? {}, caller)
    return 'faults' in called
      ? { content: [{ type: 'text', text: called.faults }], isError: true }
      : { content: [{ type: 'text', text: called.said }], structuredContent: called.answer }
  })
  return server
}

const unknownTool = (name: string, tools: readonly Tool[]): string =>
  `There is no tool "${name}". There are ${tools.map((tool) => tool.name).join(', ')}.`
