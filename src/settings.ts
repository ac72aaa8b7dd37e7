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
}

type Environment = Readonly<Record<string, string | undefined>>

const HIGHEST_PORT = 65_535
const LOG_LEVELS = [...Object.keys(pino.levels.values), 'silent']

/** Reads the settings; every fault at once, each with the name of its variable. */
export function settingsFrom(environment: Environment): Settings | { faults: string[] } {
  const { HOST = '127.0.0.1', PORT = '8080', LOG_LEVEL = 'warn' } = environment
  const corsOrigins = listed(environment['CORS_ORIGINS'])
  const faults = [
    ...(/^\d+$/.test(PORT) && Number(PORT) <= HIGHEST_PORT
      ? []
      : [`PORT must be a whole number from 0 to ${HIGHEST_PORT}, is "${PORT}"`]),
    ...(LOG_LEVELS.includes(LOG_LEVEL)
      ? []
      : [`LOG_LEVEL must be one of ${LOG_LEVELS.join(', ')}, is "${LOG_LEVEL}"`]),
    ...corsOrigins.flatMap((origin) =>
      origin === '*' || isOrigin(origin)
        ? []
        : [`CORS_ORIGINS must be origins such as http://sheet.example:8000, or *, has "${origin}"`],
    ),
  ]
  if (faults.length > 0) return { faults }
  return {
    host: HOST,
    port: Number(PORT),
    logLevel: LOG_LEVEL,
    allowedHosts: listed(environment['ALLOWED_HOSTS']),
    corsOrigins,
  }
}

const listed = (text = ''): string[] =>
  text
    .split(',')
    .map((item) => item.trim())
    .filter((item) => item !== '')

const isOrigin = (text: string): boolean => URL.canParse(text) && new URL(text).origin === text
