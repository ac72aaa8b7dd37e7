import type { FastifyDynamicSwaggerOptions } from '@fastify/swagger'
import type { FastifyInstance } from 'fastify'
import type { ContractDocument, Operation } from './contract-document.ts'
import { textAllowed, usedSchemas } from './contract-schemas.ts'

declare module 'fastify' {
  interface FastifySchema {
    /** A complete body that really runs. */
    'x-example'?: unknown
  }
}

/** How the contract is made from the routes. */
export const contractOptions = {
  openapi: {
    openapi: '3.1.0',
    info: {
      title: 'Boxwright',
      version: '0.1.0',
      description:
        'Says before the first cut whether a small home-made loudspeaker will work. Calculations are pure: the same request gives the same answer and nothing is stored, so a POST may be repeated safely. A dimensional field takes a number in the unit its name ends in, or text with a unit of its own ("6 1/4 in", "2.2 L").',
      license: { name: 'MIT', identifier: 'MIT' },
    },
    servers: [{ url: '/', description: 'The service this document came from' }],
  },
  refResolver: {
    buildLocalReference: ({ $id }, _base, _fragment, index) =>
      typeof $id === 'string' ? $id : `def-${index}`,
  },
} satisfies FastifyDynamicSwaggerOptions

/** The contract as clients get it: bodies with their examples, quantities also as text, no schema that nothing uses. */
export function contractOf(app: FastifyInstance): ContractDocument {
  const document: ContractDocument = JSON.parse(JSON.stringify(app.swagger()))
  const paths = Object.fromEntries(
    Object.entries(document.paths).map(([path, { get, post }]) => [
      path,
      { ...(post && { post: published(untagged(post)) }), ...(get && { get: published(get) }) },
    ]),
  )
  const schemas = usedSchemas(paths, document.components.schemas)
  return { ...document, paths, components: { schemas } }
}

/** Answers to POST carry no tag, so that none is ever found unmodified. */
function untagged(operation: Operation): Operation {
  const { 304: _, ...responses } = operation.responses
  return { ...operation, responses }
}

function published({ 'x-example': example, ...operation }: Operation): Operation {
  const { parameters, requestBody } = operation
  const json = requestBody?.content['application/json']
  return {
    ...operation,
    ...(parameters && {
      parameters: parameters.map((parameter) => ({ ...parameter, schema: textAllowed(parameter.schema) })),
    }),
    ...(json && { requestBody: { ...requestBody, content: { 'application/json': { ...json, example } } } }),
  }
}
