import { ATTACH_CHARGE_C, ATTACH_LARGEST_UF } from '../../../src/core/power/reservoir.ts'
import { BUS, PORTS, powerDeliveryCurrentA, powerDeliveryLevelV } from '../../../src/core/power/source.ts'
import type { Supply } from '../../../src/schema/power.ts'
import { holdRows } from './hold-rows.ts'

/** The names of the rows for the words of the contract. */
const PORT_OF: Record<string, NonNullable<Supply['port']>> = {
  'usb2 unconfigured': 'usb2-unconfigured',
  'usb2 configured': 'usb2',
  'usb3 unconfigured': 'usb3-unconfigured',
  'usb3 configured': 'usb3',
  'bc1.2 charging port': 'charging-port',
  'type-c 1.5 A': 'type-c-1.5a',
  'type-c 3 A': 'type-c-3a',
}

holdRows('source', {
  'source-': ({ kind }: { kind: string }) => ({ ...PORTS[PORT_OF[kind]!] }),
  'source-pd-': ({ voltageV }) => ({
    largestCurrentA: powerDeliveryCurrentA(voltageV, true),
    largestPowerW: voltageV * powerDeliveryCurrentA(voltageV, true),
  }),
  'pd-level-': ({ boardLargestVoltageV, levelsV }) => ({
    chooseV: powerDeliveryLevelV(boardLargestVoltageV, levelsV),
  }),
  'vbus-limits': () => ({ ...BUS }),
  'attach-capacitance': () => ({
    maximumUf: ATTACH_LARGEST_UF,
    chargeMc: ATTACH_CHARGE_C * 1e3,
  }),
  'fits-': ({ currentA, kind }: { currentA: number; kind: string }) => {
    const marginA = PORTS[PORT_OF[kind]!].currentLimitA - currentA
    return { fits: marginA >= 0, marginA }
  },
})
