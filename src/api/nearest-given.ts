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
    const member = Object.getOwnPropertyDescriptor(inner, name)
    if (member?.enumerable !== true) return given
    inner = member.value
    given = pointerTo(given, name)
  }
  return given
}

const unescaped = (name: string): string => name.replaceAll('~1', '/').replaceAll('~0', '~')
