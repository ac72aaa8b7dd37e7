import type { SchemaNode } from './schema-node.ts'

/** The parts of an OpenAPI 3.1 document that this service has. */
export interface ContractDocument {
  openapi: string
  info: { title: string; version: string; description: string }
  paths: Record<string, Partial<Record<Method, Operation>>>
  components: { schemas: Record<string, SchemaNode> }
}

export const METHODS = ['get', 'post'] as const
export type Method = (typeof METHODS)[number]

export interface Operation {
  operationId: string
  summary: string
  description: string
  parameters?: Parameter[]
  requestBody?: { content: Record<string, MediaType> }
  responses: Record<string, { description: string; content?: Record<string, MediaType> }>
  'x-example'?: unknown
}

export interface Parameter {
  name: string
  in: string
  required: boolean
  description?: string
  example?: unknown
  schema: SchemaNode
}

export interface MediaType {
  schema: SchemaNode
  example?: unknown
}
