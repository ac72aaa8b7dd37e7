import type { FastifyInstance } from 'fastify'
import { contractOf } from '../api/contract.ts'
import { Refused } from '../api/problem.ts'
import { callTool } from './call-tool.ts'
import { siteFault } from './own-site.ts'
import type { Toolbox } from './protocol.ts'
import { functionDefinitions, type Tool, toolList } from './tool-list.ts'

export interface ToolOptions {
  /** Names, besides localhost and addresses in digits, under which the tools may be called. */
  allowedHosts: readonly string[]
}

/** For chat bots: the calculations as tools at `/mcp`, and as plain function definitions at `/v1/tools`. */
export async function tools(app: FastifyInstance, { allowedHosts }: ToolOptions) {
  const shown = { schema: { hide: true } }
  let made: Toolbox | undefined
  const toolbox = () => {
    made ??= toolboxOf(app)
    return made
  }

  app.get('/v1/tools', shown, (_request, reply) =>
    reply.type('application/json; charset=utf-8').send(functionDefinitions(toolbox().tools)),
  )

  app.post('/mcp', shown, async (request, reply) => {
    const { host, origin } = request.headers
    const foreign = siteFault(host, origin, allowedHosts)
    if (foreign !== undefined) throw new Refused('foreign-site', foreign)
    // Loaded at the first call: not every installation has a bot.
    const { answerToolRequest } = await import('./protocol.ts')
    // From here on the answer passes by the hooks that mark all others.
    reply.raw.setHeader('x-request-id', request.id).setHeader('x-content-type-options', 'nosniff')
    reply.hijack()
    await answerToolRequest(toolbox(), request, reply.raw)
  })
}

function toolboxOf(app: FastifyInstance): Toolbox {
  const contract = contractOf(app)
  return {
    name: contract.info.title.toLowerCase(),
    version: contract.info.version,
    instructions: contract.info.description,
    tools: toolList(contract),
    call: (tool: Tool, given, caller) => callTool(app, tool, given, caller),
  }
}
