import { isIP } from 'node:net'

/** As long as a name of a host may be. */
const LONGEST_ECHO = 253

/**
 * Why a request may not come from where it says it goes, or undefined where it does: the guard against pages of other
 * hosts that lead a browser to a name of theirs pointing here (DNS rebinding). An address in digits cannot be such a
 * name, nor can localhost.
 */
export function siteFault(
  host: string | undefined,
  origin: string | undefined,
  allowedHosts: readonly string[],
): string | undefined {
  const called = hostOf(`http://${host ?? ''}`)
  if (called === undefined) return 'The Host header is no name of a host.'
  if (!isSafe(called.hostname, allowedHosts))
    return `The tools are called as ${called.hostname.slice(0, LONGEST_ECHO)}, which is neither localhost, an address in digits nor a name in the setting ALLOWED_HOSTS.`
  if (origin === undefined) return undefined
  const from = hostOf(origin)
  const isOwn = from !== undefined && (from.host === called.host || allowedHosts.includes(from.hostname))
  return isOwn
    ? undefined
    : 'A page of another site calls: its Origin is neither the host called nor a name in the setting ALLOWED_HOSTS.'
}

function isSafe(hostname: string, allowedHosts: readonly string[]): boolean {
  const bare = hostname.replace(/^\[|\]$/g, '')
  return bare === 'localhost' || isIP(bare) !== 0 || allowedHosts.includes(bare)
}

/** Nothing but a host: a name or password before it would let it look like another. */
function hostOf(url: string): URL | undefined {
  const read = URL.canParse(url) ? new URL(url) : undefined
  return read?.username === '' && read.password === '' && read.pathname.length <= 1 ? read : undefined
}
