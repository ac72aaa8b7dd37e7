import type { FastifyRequest } from 'fastify'

const KEPT = new Set(['/health/live', '/health/ready', '/metrics'])

/** Addresses for whoever keeps the service running: never refused, limited or logged. */
export const isForKeepers = ({ routeOptions }: FastifyRequest): boolean => KEPT.has(routeOptions.url ?? '')
