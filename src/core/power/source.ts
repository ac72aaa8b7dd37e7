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

/** Highest negotiated level that the board stands, V. Power Delivery never goes below its 5 V. */
export const powerDeliveryLevelV = (
  boardLargestV: number,
  levels: readonly number[] = POWER_DELIVERY_LEVELS_V,
): number => Math.max(5, ...levels.filter((level) => level <= boardLargestV))

/** Largest current at a Power Delivery level, A: 5 A only at 20 V and with a marked lead. Seen in summaries. */
export const powerDeliveryCurrentA = (levelV: number): number => (levelV >= 20 ? 5 : 3)
