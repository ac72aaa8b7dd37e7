import type { Supply } from '../../schema/power.ts'

type PortKind = NonNullable<Supply['port']>

/** What a port must give. */
export interface PortLimit {
  voltageV: number
  currentLimitA: number
}

/**
 * Current limits of USB sockets. Values seen in published summaries; clauses (USB 2.0 7.2.1, USB 3.2 11.4,
 * Battery Charging 1.2, Type-C) from memory.
 */
export const PORTS = {
  'usb2-unconfigured': { voltageV: 5, currentLimitA: 0.1 },
  usb2: { voltageV: 5, currentLimitA: 0.5 },
  'usb3-unconfigured': { voltageV: 5, currentLimitA: 0.15 },
  usb3: { voltageV: 5, currentLimitA: 0.9 },
  'charging-port': { voltageV: 5, currentLimitA: 1.5 },
  'type-c-default': { voltageV: 5, currentLimitA: 0.5 },
  'type-c-1.5a': { voltageV: 5, currentLimitA: 1.5 },
  'type-c-3a': { voltageV: 5, currentLimitA: 3 },
  'power-delivery': { voltageV: 5, currentLimitA: 3 },
} satisfies Record<PortKind, PortLimit>

/** Fixed levels of Power Delivery up to 100 W, V; 12 V is not one of them. Seen in published summaries. */
export const POWER_DELIVERY_LEVELS_V = [5, 9, 15, 20] as const

/** Unit loads and bus voltages of the standards. Seen in summaries. */
export const BUS = {
  sourceMinV: 4.75,
  sourceMaxV: 5.25,
  typeCSourceMaxV: 5.5,
  lowPowerDeviceMinV: 4.4,
  usb3DeviceMinV: 4,
  usb3LowPowerHubMinV: 4.45,
} as const

/** What a Type-C lead may lose at its rated current, V: bus and ground. USB Type-C 4.4.1, seen as quoted by B. Leung. */
const TYPE_C_LEAD_DROP_V = { bus: 0.5, ground: 0.25 }

/** The least that a lawful source through a lawful Type-C lead leaves at the board, V, and that lead, ohm the loop. */
export function typeCWorstCase(ratedCurrentA: number): { lowestAtDeviceV: number; loopOhm: number } {
  const dropV = TYPE_C_LEAD_DROP_V.bus + TYPE_C_LEAD_DROP_V.ground
  return { lowestAtDeviceV: BUS.sourceMinV - dropV, loopOhm: dropV / ratedCurrentA }
}

/** Highest negotiated level that the board stands, V. Power Delivery never goes below its 5 V. */
export const powerDeliveryLevelV = (
  boardLargestV: number,
  levels: readonly number[] = POWER_DELIVERY_LEVELS_V,
): number => Math.max(5, ...levels.filter((level) => level <= boardLargestV))

/** Largest current at a Power Delivery level, A: 5 A only at 20 V and with a marked lead. Seen in summaries. */
export const powerDeliveryCurrentA = (levelV: number): number => (levelV >= 20 ? 5 : 3)

/** Advertised current by the voltage at the CC pin: thresholds 0.20, 0.66, 1.23 V, seen. */
const CC_STEPS = [
  { aboveV: 1.23, advertises: '3 A' },
  { aboveV: 0.66, advertises: '1.5 A' },
  { aboveV: 0.2, advertises: 'default' },
] as const

/** What a Type-C source advertises through its pull-up into the pull-down of the board. Voltage divider. */
export function typeCAdvert(
  pullUpKohm: number,
  pullUpToV: number,
  pullDownKohm: number,
): { ccVoltageV: number; advertises: '3 A' | '1.5 A' | 'default' | 'nothing' } {
  const ccVoltageV = (pullUpToV * pullDownKohm) / (pullUpKohm + pullDownKohm)
  const step = CC_STEPS.find(({ aboveV }) => ccVoltageV > aboveV)
  return { ccVoltageV, advertises: step?.advertises ?? 'nothing' }
}
