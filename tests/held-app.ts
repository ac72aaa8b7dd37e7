import type { InjectOptions, LightMyRequestResponse } from 'fastify'
import { contractOf } from '../src/api/contract.ts'
import { type AppOptions, buildApp as build } from '../src/app.ts'
import { contractChecks } from './api/contract-checks.ts'

/** The service under test, whose every answer is held to its contract: shape, status and media type. */
export async function buildApp(options?: AppOptions) {
  const app = await build(options)
  await app.ready()
  const contract = contractOf(app)
  const faultsOf = contractChecks(contract)
  const inject = app.inject.bind(app)

  async function held(given: InjectOptions | string): Promise<LightMyRequestResponse> {
    const response = await inject(given)
    const faults = heldFaults(given, response)
    if (faults.length > 0) throw new Error(`the answer does not fit the contract: ${faults.join('; ')}`)
    return response
  }

  function heldFaults(given: InjectOptions | string, response: LightMyRequestResponse): string[] {
    const { method = 'GET', url = '' } = typeof given === 'string' ? { url: given } : given
    const path = String(url).split('?')[0] ?? ''
    const verb = method.toLowerCase()
    if ((verb !== 'get' && verb !== 'post') || contract.paths[path]?.[verb] === undefined) return []
    return faultsOf(path, verb, response)
  }

  Reflect.set(app, 'inject', held)
  return app
}
