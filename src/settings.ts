import { isIP } from 'node:net'
import { domainToASCII } from 'node:url'
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
/** As long as work may wait for its turn and then take, and some seconds for its answer. */
const SHUTDOWN_S = '125'
const LONGEST_NAME = 253
/** Names that stand for the ranges of private addresses (RFC 1918, 3927, 4193). */
const NETS = ['loopback', 'linklocal', 'uniquelocal']
const LOG_LEVELS = [...Object.keys(pino.levels.values), 'silent']

/** Reads the settings; every fault at once, each with the name of its variable. */
export function settingsFrom(environment: Environment): Settings | { faults: string[] } {
  const { HOST = '127.0.0.1', PORT = '8080', LOG_LEVEL = 'warn', METRICS = 'on' } = environment
  const { RATE_LIMIT = '0', SHUTDOWN_SECONDS = SHUTDOWN_S } = environment
  const allowedHosts = listed(environment['ALLOWED_HOSTS'])
  const corsOrigins = listed(environment['CORS_ORIGINS'])
  const trustProxy = listed(environment['TRUST_PROXY'])
  const faults = [
    // An empty address would be every address of the machine, which nobody wrote.
    ...(HOST.trim() === '' ? ['HOST must be an address or a name to listen on, is empty'] : []),
    ...wholeNumber('PORT', PORT, HIGHEST_PORT),
    ...oneOfThese('LOG_LEVEL', LOG_LEVEL, LOG_LEVELS),
    ...allowedHosts.flatMap((name) =>
      hostName(name) === undefined
        ? [`ALLOWED_HOSTS must be host names such as box.lan, without port or http://, has "${name}"`]
        : [],
    ),
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
    host: HOST.trim(),
    port: Number(PORT),
    logLevel: LOG_LEVEL,
    allowedHosts: allowedHosts.flatMap((name) => hostName(name) ?? []),
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

const LABEL = /^[a-z\d_]([a-z\d_-]{0,61}[a-z\d_])?$/

/** The name as a browser sends it: in small letters, others than Latin ones written out (RFC 3492). */
function hostName(text: string): string | undefined {
  // What parts an address is refused here: it would be cut off unsaid.
  const name = /[:/?#@[\]\\\s]/.test(text) ? '' : domainToASCII(text)
  return name.length <= LONGEST_NAME && name.split('.').every((label) => LABEL.test(label)) ? name : undefined
}

function isProxy(text: string): boolean {
  const [address = '', bits, ...rest] = text.split('/')
  const longest = { 0: 0, 4: 32, 6: 128 }[isIP(address)] ?? 0
  if (rest.length > 0 || longest === 0) return NETS.includes(text)
  return bits === undefined || (/^\d{1,3}$/.test(bits) && Number(bits) >= 1 && Number(bits) <= longest)
}
