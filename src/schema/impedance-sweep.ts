import { type Static, Type } from 'typebox'
import { quantity } from './quantity.ts'
import { ref, share } from './shared.ts'

/** More than any instrument gives; a longer sweep is thinned before it is sent. */
const MOST_POINTS = 2000

const frequency = () =>
  quantity('Hz', 'Frequency of a reading', { exclusiveMinimum: 0, maximum: 100_000, examples: [100] })

const voltage = (description: string) =>
  quantity('V', description, { exclusiveMinimum: 0, maximum: 100, examples: [0.1] })

const VoltageReadings = share(
  'VoltageReadings',
  Type.Object(
    {
      resistorOhm: quantity('ohm', 'Resistor in series with the driver, as a meter reads it', {
        minimum: 0.1,
        maximum: 100_000,
        examples: [10],
      }),
      steps: Type.Array(
        Type.Object(
          {
            frequencyHz: frequency(),
            driverV: voltage('RMS voltage across the driver'),
            resistorV: voltage('RMS voltage across the resistor, at the same setting'),
          },
          { additionalProperties: false, description: 'One setting of the generator' },
        ),
        { description: 'Readings in any order', minItems: 1, maxItems: MOST_POINTS },
      ),
    },
    {
      additionalProperties: false,
      description:
        'Readings of a multimeter: generator, resistor and driver in series; impedance = resistorOhm · driverV / resistorV',
    },
  ),
)
export type VoltageReadings = Static<typeof VoltageReadings>

/** An impedance over frequency in one of three ways of writing it down. */
export const ImpedanceSweep = share(
  'ImpedanceSweep',
  Type.Object(
    {
      frequencyHz: Type.Optional(
        Type.Array(frequency(), {
          description: 'Frequencies, rising or falling; with impedanceOhm',
          'x-unit-items': 'Hz',
          maxItems: MOST_POINTS,
          examples: [[50, 100, 200]],
        }),
      ),
      impedanceOhm: Type.Optional(
        Type.Array(
          quantity('ohm', 'Modulus of the impedance', {
            exclusiveMinimum: 0,
            maximum: 1e6,
            examples: [8.2],
          }),
          {
            description: 'Modulus of the impedance at each frequency',
            'x-unit-items': 'ohm',
            maxItems: MOST_POINTS,
            examples: [[5.1, 20.4, 6.3]],
          },
        ),
      ),
      phaseDeg: Type.Optional(
        Type.Array(
          quantity('deg', 'Phase of the impedance, plus where the coil wins', {
            minimum: -180,
            maximum: 180,
            examples: [-12],
          }),
          {
            description: 'Phase of the impedance at each frequency; left out when it was not measured',
            'x-unit-items': 'deg',
            maxItems: MOST_POINTS,
            examples: [[30, 2, -40]],
          },
        ),
      ),
      csv: Type.Optional(
        Type.String({
          description:
            'The same as text, one reading a line: frequency in Hz, impedance in ohm and, if measured, phase in degrees; parted by comma, semicolon, tab or spaces, decimal point or comma. A header may name the columns in another order, and kHz. Lines without numbers are skipped',
          minLength: 1,
          maxLength: 200_000,
          examples: ['Hz;ohm\n50;5,1\n100;20,4\n200;6,3'],
        }),
      ),
      readings: Type.Optional(ref(VoltageReadings)),
    },
    {
      additionalProperties: false,
      description:
        'Impedance over frequency: give frequencyHz with impedanceOhm (and phaseDeg), or csv, or readings with a multimeter',
    },
  ),
)
export type ImpedanceSweep = Static<typeof ImpedanceSweep>
