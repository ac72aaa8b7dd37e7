import type { Supply } from '../../schema/power.ts'

type PortKind = NonNullable<Supply['port']>

const USB_KINDS: readonly Supply['kind'][] = ['computer-port', 'charger', 'power-bank']

/** Sources that have, or may have, a USB socket. */
export const mayHaveUsb = ({ kind }: Pick<Supply, 'kind'>): boolean => USB_KINDS.includes(kind)

/** Sources that are a USB socket for certain: those that name one, and a computer port. */
export const isUsb = ({ kind, port }: Pick<Supply, 'kind'> & { port?: PortKind | undefined }): boolean =>
  port !== undefined || kind === 'computer-port'

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

/** Levels above 100 W, V. Seen in published summaries. */
const EXTENDED_LEVELS_V = [28, 36, 48]
/** A level is met within this share: 4.75 to 5.25 V at 5 V. Seen in summaries. */
const LEVEL_TOLERANCE = 0.05

/** Whether a voltage is one of the fixed levels of Power Delivery. */
export const isDeliveryLevel = (voltageV: number): boolean =>
  [...POWER_DELIVERY_LEVELS_V, ...EXTENDED_LEVELS_V].some(
    (level) => Math.abs(voltageV - level) <= LEVEL_TOLERANCE * level,
  )

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
export const powerDeliveryCurrentA = (levelV: number, isMarkedLead: boolean): number =>
  levelV >= 20 && isMarkedLead ? 5 : 3

/** Whether a socket gives its full current only to a device that asks, by pull-downs or by negotiation. */
export const mustBeAsked = (port: PortKind): boolean =>
  port === 'type-c-1.5a' || port === 'type-c-3a' || port === 'power-delivery'

/** Voltage that a Type-C lead may lose at its rated current: 500 mV out and 250 mV back. USB Type-C 4.4.1, as quoted. */
const TYPE_C_LEAD_LOSS_V = 0.75
/** Share by which a negotiated level may be low: as much as 4.75 of 5 V. From memory. */
const LOWEST_SHARE = 0.95

/**
 * Least voltage that the standard lets a socket give, V: 4.75 at a source, 4.40 and 4.45 behind a hub that has not
 * been configured. Seen in summaries.
 */
export function lowestSocketV(port: PortKind | undefined, voltageV: number): number {
  if (port === 'usb2-unconfigured') return BUS.lowPowerDeviceMinV
  if (port === 'usb3-unconfigured') return BUS.usb3LowPowerHubMinV
  return Math.min(voltageV, voltageV > BUS.typeCSourceMaxV ? LOWEST_SHARE * voltageV : BUS.sourceMinV)
}

/** Least voltage that a device must live on behind a lawful lead, V. USB 2.0, USB 3.x and Type-C, seen in summaries. */
export function lowestAtDeviceV(port: PortKind | undefined, socketV: number): number {
  if (port === 'usb3' || port === 'usb3-unconfigured') return BUS.usb3DeviceMinV
  return isTypeC(port) ? socketV - TYPE_C_LEAD_LOSS_V : BUS.lowPowerDeviceMinV
}

/** Whether the socket is of the kind with two CC pins. */
export const isTypeC = (port: PortKind | undefined): boolean =>
  port === 'power-delivery' || (port?.startsWith('type-c') ?? false)
