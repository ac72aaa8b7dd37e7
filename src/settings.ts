import { isIP } from 'node:net'
import { pino } from 'pino'

/** What the environment can set; every setting has a default that is safe on one machine. */
export interface Settings {
  host: string
  port: number
  logLevel: string
  /** Names under which chat bots may reach the service, besides localhost and addresses in digits. */
  allowedHosts: string[]
  /** Pages of these other origins may call the service; `*` for any. */
  corsOrigins: string[]
  /** Addresses of proxies whose word on the client is taken. */
  trustProxy: string[]
  /** Requests a minute that one client may make; 0 for any number. */
  rateLimit: number
  /** Whether `/metrics` is shown. */
  metrics: boolean
  /** How long what was begun may take to finish when the service is ended. */
  shutdownSeconds: number
}

type Environment = Readonly<Record<string, string | undefined>>

const HIGHEST_PORT = 65_535
const HIGHEST_RATE = 1_000_000
const LONGEST_SHUTDOWN_S = 600
/** Names that stand for the ranges of private addresses (RFC 1918, 3927, 4193). */
const NETS = ['loopback', 'linklocal', 'uniquelocal']
const LOG_LEVELS = [...Object.keys(pino.levels.values), 'silent']

/** Reads the settings; every fault at once, each with the name of its variable. */
export function settingsFrom(environment: Environment): Settings | { faults: string[] } {
  const { HOST = '127.0.0.1', PORT = '8080', LOG_LEVEL = 'warn', METRICS = 'on' } = environment
  const { RATE_LIMIT = '0', SHUTDOWN_SECONDS = '20' } = environment
  const corsOrigins = listed(environment['CORS_ORIGINS'])
  const trustProxy = listed(environment['TRUST_PROXY'])
  const faults = [
    ...wholeNumber('PORT', PORT, HIGHEST_PORT),
    ...oneOfThese('LOG_LEVEL', LOG_LEVEL, LOG_LEVELS),
    ...corsOrigins.flatMap((origin) =>
      origin === '*' || isOrigin(origin)
        ? []
        : [`CORS_ORIGINS must be origins such as http://sheet.example:8000, or *, has "${origin}"`],
    ),
    ...trustProxy.flatMap((proxy) =>
      isProxy(proxy)
        ? []
        : [`TRUST_PROXY must be addresses, ranges such as 10.0.0.0/8, or ${NETS.join(', ')}, has "${proxy}"`],
    ),
    ...wholeNumber('RATE_LIMIT', RATE_LIMIT, HIGHEST_RATE),
    ...oneOfThese('METRICS', METRICS, ['on', 'off']),
    ...wholeNumber('SHUTDOWN_SECONDS', SHUTDOWN_SECONDS, LONGEST_SHUTDOWN_S),
  ]
  if (faults.length > 0) return { faults }
  return {
    host: HOST,
    port: Number(PORT),
    logLevel: LOG_LEVEL,
    allowedHosts: listed(environment['ALLOWED_HOSTS']),
    corsOrigins,
    trustProxy,
    rateLimit: Number(RATE_LIMIT),
    metrics: METRICS === 'on',
    shutdownSeconds: Number(SHUTDOWN_SECONDS),
  }
}

const wholeNumber = (name: string, text: string, most: number): string[] =>
  /^\d{1,9}$/.test(text) && Number(text) <= most
    ? []
    : [`${name} must be a whole number from 0 to ${most}, is "${text}"`]

const oneOfThese = (name: string, text: string, words: readonly string[]): string[] =>
  words.includes(text) ? [] : [`${name} must be one of ${words.join(', ')}, is "${text}"`]

const listed = (text = ''): string[] =>
  text
    .split(',')
    .map((item) => item.trim())
    .filter((item) => item !== '')

const isOrigin = (text: string): boolean => URL.canParse(text) && new URL(text).origin === text

function isProxy(text: string): boolean {
  const [address = '', bits] = text.split('/')
  const longest = { 0: -1, 4: 32, 6: 128 }[isIP(address)] ?? -1
  return (
    NETS.includes(text) ||
    (longest > 0 && (bits === undefined || (/^\d{1,3}$/.test(bits) && Number(bits) <= longest)))
  )
}
