export const A_MINUTE_MS = 60_000
/** A timer of a browser runs no longer than 2^31 ms, and at once when asked to. */
const MOST_MINUTES = 2 ** 31 / A_MINUTE_MS - 1

/** Minutes without a touch after which the page is cleared for the next visitor; `?idle=` in the address sets it. */
export function idleMinutes(search: string): number {
  const asked = Number(new URLSearchParams(search).get('idle') ?? Number.NaN)
  return asked >= 0 ? Math.min(asked, MOST_MINUTES) : 10
}
