import { isIP } from 'node:net'

/**
 * Whether a request comes from where it says it goes: the guard against pages of other hosts that lead a browser to
 * a name of theirs pointing here (DNS rebinding). An address in digits cannot be such a name, nor can localhost.
 */
export function isOwnSite(
  host: string | undefined,
  origin: string | undefined,
  allowedHosts: readonly string[],
): boolean {
  const called = hostOf(`http://${host ?? ''}`)
  if (called === undefined || !isSafe(called.hostname, allowedHosts)) return false
  if (origin === undefined) return true
  const from = hostOf(origin)
  return from !== undefined && (from.host === called.host || allowedHosts.includes(from.hostname))
}

function isSafe(hostname: string, allowedHosts: readonly string[]): boolean {
  const bare = hostname.replace(/^\[|\]$/g, '')
  return bare === 'localhost' || isIP(bare) !== 0 || allowedHosts.includes(bare)
}

const hostOf = (url: string): URL | undefined => (URL.canParse(url) ? new URL(url) : undefined)
