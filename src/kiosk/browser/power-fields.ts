import { choice, count, type Field, quantity, yesNo } from './field.ts'

export const amplifier: readonly Field[] = [
  quantity(
    '/amplifier/supplyVoltageV',
    'Voltage of the board',
    'V',
    'Printed on it; 5 V from USB, often 12 V.',
  ),
  count('/amplifier/channels', 'Channels in use', '2 for stereo.', { usual: 'one a box' }),
  quantity(
    '/amplifier/minimumLoadOhm',
    'Lowest load it may drive',
    'ohm',
    'Printed on the board: 4 Ω, say.',
    {
      usual: '4',
    },
  ),
  quantity(
    '/amplifier/ratedPowerW',
    'Power it claims, a channel',
    'W',
    'Printed or advertised; often too much.',
  ),
]

export const amplifierMore: readonly Field[] = [
  choice(
    '/amplifier/output',
    'How it drives the loudspeaker',
    'Nearly all small boards bridge.',
    [
      { value: 'bridge', label: 'Both wires live (bridge)' },
      { value: 'single-ended', label: 'One wire is ground (single-ended)' },
    ],
    { usual: 'bridge' },
  ),
  quantity('/amplifier/minimumSupplyV', 'Least supply voltage', 'V', 'Below it the board stops.'),
  quantity('/amplifier/maximumSupplyV', 'Highest supply voltage', 'V', 'Above it the board dies.'),
  quantity('/amplifier/gainDb', 'Voltage gain', 'dB', 'Often 20 to 36.'),
  quantity('/amplifier/inputResistanceKohm', 'Input resistance', 'kohm', 'Often 10 to 50.'),
  quantity(
    '/amplifier/quiescentCurrentMa',
    'Current without music',
    'mA',
    'From a meter in the supply lead.',
  ),
  yesNo(
    '/amplifier/asksForPower',
    'The board asks a USB source for power',
    'It has a USB-C chip or pull-downs.',
  ),
]

export const supplyKind: Field = choice('/supply/kind', 'Kind of source', 'What feeds the amplifier.', [
  { value: 'computer-port', label: 'Port of a computer' },
  { value: 'charger', label: 'USB charger' },
  { value: 'power-bank', label: 'Power bank' },
  { value: 'adapter', label: 'Plug-in adapter' },
  { value: 'cells', label: 'Lithium cells in a pack' },
])

export const usbSocket: Field = choice('/supply/port', 'Which socket', 'Its standard sets the current.', [
  { value: 'usb2', label: 'USB 2, plain' },
  { value: 'usb3', label: 'USB 3, blue' },
  { value: 'charging-port', label: 'Charging port, flat' },
  { value: 'type-c-default', label: 'USB-C, plain' },
  { value: 'type-c-1.5a', label: 'USB-C, 1.5 A' },
  { value: 'type-c-3a', label: 'USB-C, 3 A' },
  { value: 'power-delivery', label: 'USB-C with power delivery' },
  { value: 'usb2-unconfigured', label: 'USB 2, without data' },
  { value: 'usb3-unconfigured', label: 'USB 3, without data' },
])

export const source: readonly Field[] = [
  quantity('/supply/voltageV', 'Voltage of the source', 'V', 'From its label.', {
    usual: 'that of the board',
  }),
  quantity('/supply/currentLimitA', 'Current it can give', 'A', 'From its label.'),
]

export const pack: readonly Field[] = [
  count('/supply/cellsInSeries', 'Cells in a row', 'Each 3.0 V empty to 4.2 V full.'),
]

export const battery: readonly Field[] = [
  quantity('/supply/capacityMah', 'Capacity', 'mAh', 'Printed on it; tells how long it plays.'),
]

export const bank: readonly Field[] = [
  quantity(
    '/supply/cutoffCurrentMa',
    'Switches off below',
    'mA',
    'Power banks go to sleep in quiet passages.',
    {
      usual: '50',
    },
  ),
]

export const lead: readonly Field[] = [
  quantity('/supply/cable/lengthM', 'Length of the supply lead', 'm', 'From source to board.'),
  quantity(
    '/supply/cable/gaugeAwg',
    'Thickness of its wire',
    'AWG',
    'Printed on it; 28 is thin, 18 is thick.',
  ),
  quantity(
    '/supply/reservoirUf',
    'Reservoir capacitor',
    'uF',
    'A big capacitor at the board, if there is one.',
  ),
  yesNo('/supply/sharedWithSource', 'The music player hangs on the same supply', 'Then hum may come in.'),
]

export const sound: readonly Field[] = [
  quantity('/signal/sourceLevelV', 'Loudest signal of the player', 'V', 'A phone gives about 0.5 V.'),
  quantity(
    '/signal/volumeControl/resistanceKohm',
    'Volume control',
    'kohm',
    'Printed on the knob; empty for none.',
  ),
  quantity('/signal/inputCapacitorUf', 'Input capacitor', 'uF', 'Between volume control and amplifier.'),
]
