import { isRecord, pointerTo } from './schema-node.ts'

/**
 * The pointer itself where the request has that member, else that of the nearest member above that it has:
 * `/supply/currentLimitA` becomes `/supply`, or empty for the whole request.
 */
export function nearestGiven(pointer: string, request: unknown): string {
  let inner = request
  let given = ''
  for (const name of pointer.split('/').slice(1).map(unescaped)) {
    if (!(isRecord(inner) || Array.isArray(inner))) return given
    const member = Object.entries(inner).find(([known]) => known === name)
    if (member === undefined) return given
    inner = member[1]
    given = pointerTo(given, name)
  }
  return given
}

const unescaped = (name: string): string => name.replaceAll('~1', '/').replaceAll('~0', '~')
