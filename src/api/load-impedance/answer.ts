import { hertz, ohm } from '../../core/say.ts'
import type { Finding } from '../../schema/frame.ts'
import type { LoadImpedanceSections } from '../../schema/load-impedance.ts'

const mayDrive = (allowed: boolean | null): string => {
  if (allowed === null) return ''
  return allowed ? ' The amplifier may drive it.' : ' The amplifier must not drive it.'
}

/** The sentence of `/v1/load-impedance`. */
export function loadImpedanceAnswer({ load }: LoadImpedanceSections, findings: readonly Finding[]): string {
  // A load can stand above the minimum and be a short or an open circuit all the same.
  const isBlocked = findings.some(({ severity }) => severity === 'blocker')
  const meter =
    load.meterOhm === null
      ? 'A meter reads nothing through the capacitor'
      : `A meter should read ${ohm(load.meterOhm)}`
  return `${meter}; the load is rated ${ohm(load.ratedOhm)} and falls to ${ohm(load.minimumOhm)} at ${hertz(load.minimumAtHz)}.${isBlocked && load.mayDrive === true ? '' : mayDrive(load.mayDrive)}`
}
