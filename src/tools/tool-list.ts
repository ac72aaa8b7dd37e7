import type { ContractDocument, Operation } from '../api/contract-document.ts'
import type { SchemaNode } from '../api/schema-node.ts'

/** A calculation as a chat bot sees it; every word and every schema of it stands in the contract. */
export interface Tool {
  name: string
  title: string
  description: string
  path: string
  input: ToolSchema
  output: ToolSchema
}

/** A schema of an object that needs no other document: what it points at lies in `$defs`. */
export interface ToolSchema extends SchemaNode {
  type: 'object'
  $defs?: Record<string, SchemaNode>
  [keyword: string]: unknown
}

/** One tool for each calculation, in the order of the contract, which is fixed. */
export function toolList(contract: ContractDocument): Tool[] {
  return Object.entries(contract.paths).flatMap(([path, { post }]) => {
    const body = post?.requestBody?.content['application/json']
    const answer = post?.responses['200']?.content?.['application/json']
    if (post === undefined || body === undefined || answer === undefined) return []
    return [toolOf(contract, path, post, body, answer.schema)]
  })
}

function toolOf(
  contract: ContractDocument,
  path: string,
  { operationId, summary, description }: Operation,
  body: { schema: SchemaNode; example?: unknown },
  answer: SchemaNode,
): Tool {
  return {
    name: operationId,
    title: summary,
    description,
    path,
    input: { ...selfContained(contract, body.schema), examples: [body.example] },
    output: selfContained(contract, answer),
  }
}

const SHARED = '#/components/schemas/'

/** The schema with everything that it points at, directly or through others. */
function selfContained({ components }: ContractDocument, schema: SchemaNode): ToolSchema {
  const root = schema.$ref === undefined ? schema : (components.schemas[nameIn(schema.$ref)] ?? {})
  const found = new Map<string, SchemaNode>()
  const queue: unknown[] = [root]
  while (queue.length > 0) {
    for (const name of namesIn(queue.pop())) {
      const target = components.schemas[name]
      if (target === undefined || found.has(name)) continue
      found.set(name, target)
      queue.push(target)
    }
  }
  const moved: ToolSchema = withLocalPointers({
    ...root,
    ...(found.size > 0 && { $defs: Object.fromEntries(found) }),
  })
  return { ...moved, type: 'object' }
}

const nameIn = (pointer: string): string => pointer.slice(SHARED.length)

const namesIn = (schema: unknown): string[] =>
  [...JSON.stringify(schema).matchAll(/"#\/components\/schemas\/([^"/]+)"/g)].map(([, name = '']) => name)

const withLocalPointers = (schema: object) =>
  JSON.parse(JSON.stringify(schema).replaceAll(`"${SHARED}`, '"#/$defs/'))

/** The tools as function definitions, for a bot that speaks no tool protocol: name, description, parameters. */
export const functionDefinitions = (tools: readonly Tool[]) =>
  tools.map(({ name, description, path, input }) => ({
    type: 'function',
    function: { name, description, parameters: input },
    request: { method: 'POST', path },
  }))
