import { type Static, Type } from 'typebox'
import { Cable } from './cable.ts'
import { oneOf } from './one-of.ts'
import { Indicator } from './power-indicator.ts'
import { quantity } from './quantity.ts'
import { ref, share } from './shared.ts'
import { VolumeControl } from './volume-control.ts'

export const Amplifier = share(
  'Amplifier',
  Type.Object(
    {
      channels: Type.Optional(
        Type.Integer({
          description: 'Channels in use; 2 when left out',
          minimum: 1,
          maximum: 16,
          examples: [2],
        }),
      ),
      output: Type.Optional(
        oneOf(['bridge', 'single-ended'], 'How the output drives the load; bridge when left out'),
      ),
      supplyVoltageV: Type.Optional(
        quantity('V', 'Supply voltage the board runs on', { minimum: 1, maximum: 100, examples: [12] }),
      ),
      minimumSupplyV: Type.Optional(
        quantity('V', 'Lowest supply voltage the board works on', { minimum: 0.5, maximum: 100 }),
      ),
      maximumSupplyV: Type.Optional(
        quantity('V', 'Highest supply voltage the board stands', { minimum: 1, maximum: 200 }),
      ),
      minimumLoadOhm: Type.Optional(
        quantity('ohm', 'Lowest rated load the board may drive; 4 when left out', {
          minimum: 0.5,
          maximum: 1000,
          examples: [4],
        }),
      ),
      ratedPowerW: Type.Optional(
        quantity('W', 'Power a channel that the maker claims', {
          minimum: 0.01,
          maximum: 5000,
          examples: [10],
        }),
      ),
      gainDb: Type.Optional(quantity('dB', 'Voltage gain', { minimum: -20, maximum: 80, examples: [26] })),
      inputResistanceKohm: Type.Optional(
        quantity('kohm', 'Input resistance', { minimum: 0.1, maximum: 10_000, examples: [20] }),
      ),
      quiescentCurrentMa: Type.Optional(
        quantity('mA', 'Supply current without signal', { minimum: 0, maximum: 10_000, examples: [25] }),
      ),
      efficiency: Type.Optional(
        Type.Number({
          description: 'Share of the supply power that reaches the load at full power; 0.85 when left out',
          minimum: 0.05,
          maximum: 1,
          examples: [0.88],
        }),
      ),
      outputResistanceOhm: Type.Optional(
        quantity('ohm', 'Resistance of the output stage and its coils', {
          minimum: 0,
          maximum: 20,
          examples: [0.3],
        }),
      ),
      largestDuty: Type.Optional(
        Type.Number({
          description: 'Largest share of the supply that the output swings to; 1 when left out',
          minimum: 0.3,
          maximum: 1,
        }),
      ),
      outputCapacitorFitted: Type.Optional(
        Type.Boolean({
          description:
            'true when a board with single-ended outputs carries a capacitor before each loudspeaker; false when left out',
        }),
      ),
      asksForPower: Type.Optional(
        Type.Boolean({
          description:
            'true when the board negotiates with a USB source (data chip or pull-downs); false when left out',
        }),
      ),
    },
    { additionalProperties: false, description: 'The amplifier board' },
  ),
)
export type Amplifier = Static<typeof Amplifier>

export const Supply = share(
  'Supply',
  Type.Object(
    {
      kind: oneOf(['computer-port', 'charger', 'power-bank', 'adapter', 'cells'], 'What feeds the amplifier'),
      port: Type.Optional(
        oneOf(
          [
            'usb2-unconfigured',
            'usb2',
            'usb3-unconfigured',
            'usb3',
            'charging-port',
            'type-c-default',
            'type-c-1.5a',
            'type-c-3a',
            'power-delivery',
          ],
          'The kind of USB socket, where its standard sets the current; only for computer-port, charger and power-bank',
        ),
      ),
      voltageV: Type.Optional(
        quantity('V', "Voltage of the source; the amplifier's when left out", {
          minimum: 1,
          maximum: 100,
          examples: [12],
        }),
      ),
      currentLimitA: Type.Optional(
        quantity('A', 'Current the source can give', { minimum: 0.005, maximum: 100, examples: [2] }),
      ),
      cellsInSeries: Type.Optional(
        Type.Integer({
          description:
            'Lithium cells in series, 3.0 V empty to 4.2 V full each; follows from the voltage when left out',
          minimum: 1,
          maximum: 20,
        }),
      ),
      capacityMah: Type.Optional(
        quantity('mAh', 'Capacity of the pack or power bank at the cell voltage', {
          minimum: 10,
          maximum: 1e6,
        }),
      ),
      cutoffCurrentMa: Type.Optional(
        quantity('mA', 'Current below which a power bank switches itself off; 50 when left out', {
          minimum: 0,
          maximum: 1000,
        }),
      ),
      cable: Type.Optional(ref(Cable)),
      reservoirUf: Type.Optional(
        quantity('uF', 'Reservoir capacitor at the board', { minimum: 0, maximum: 1e6, examples: [1000] }),
      ),
      reservoirRatingV: Type.Optional(
        quantity('V', 'Voltage marked on the reservoir capacitor', { minimum: 1, maximum: 1000 }),
      ),
      reservoirEsrOhm: Type.Optional(
        quantity('ohm', 'Resistance of the reservoir capacitor itself (ESR); 0.03 when left out', {
          minimum: 0.001,
          maximum: 10,
          examples: [0.03],
        }),
      ),
      inrushLimiterOhm: Type.Optional(
        quantity('ohm', 'Resistance in series until the reservoir is charged', {
          minimum: 0,
          maximum: 10_000,
        }),
      ),
      sharedWithSource: Type.Optional(
        Type.Boolean({ description: 'true when the audio source hangs on the same supply' }),
      ),
      indicator: Type.Optional(ref(Indicator)),
      switchRatedA: Type.Optional(
        quantity('A', 'DC current the switch is rated for', { minimum: 0.01, maximum: 100 }),
      ),
    },
    { additionalProperties: false, description: 'What feeds the amplifier and how' },
  ),
)
export type Supply = Static<typeof Supply>

export const Signal = share(
  'Signal',
  Type.Object(
    {
      sourceLevelV: Type.Optional(
        quantity('V', 'Highest level the source gives, RMS', {
          minimum: 0.001,
          maximum: 50,
          examples: [0.5],
        }),
      ),
      sourceResistanceOhm: Type.Optional(
        quantity('ohm', 'Output resistance of the source; 0 when left out', { minimum: 0, maximum: 100_000 }),
      ),
      shieldResistanceOhm: Type.Optional(
        quantity('ohm', 'Resistance of the shield of the audio lead, end to end; 0.15 when left out', {
          minimum: 0.001,
          maximum: 10,
        }),
      ),
      volumeControl: Type.Optional(ref(VolumeControl)),
      inputCapacitorUf: Type.Optional(
        quantity('uF', 'Coupling capacitor, between wiper and amplifier', {
          minimum: 0.0001,
          maximum: 10_000,
          examples: [0.47],
        }),
      ),
    },
    { additionalProperties: false, description: 'From the audio source to the amplifier input' },
  ),
)
export type Signal = Static<typeof Signal>

export const Programme = oneOf(
  ['sine', 'compressed-music', 'music', 'speech'],
  'What is played; sets the crest factor; music when left out',
)
export type Programme = Static<typeof Programme>
