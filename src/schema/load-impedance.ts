import { type Static, Type } from 'typebox'
import { Box } from './box.ts'
import { Driver } from './driver.ts'
import { PassiveRadiator, Port } from './port.ts'
import { Amplifier } from './power.ts'
import { curveOf, maybeOf, maybeTrue, outputOf, quantity } from './quantity.ts'
import { ref, share } from './shared.ts'
import { Wiring } from './wiring.ts'

const LoadCurveRange = share(
  'LoadCurveRange',
  Type.Object(
    {
      fromHz: Type.Optional(
        quantity('Hz', 'Lowest frequency; 10 when left out', { minimum: 1, maximum: 10_000, examples: [10] }),
      ),
      toHz: Type.Optional(
        quantity('Hz', 'Highest frequency; 20000 when left out', {
          minimum: 2,
          maximum: 100_000,
          examples: [20_000],
        }),
      ),
      points: Type.Optional(
        Type.Integer({
          description: 'Points of the curve, spread evenly over the octaves; 240 when left out',
          minimum: 2,
          maximum: 2000,
          examples: [240],
        }),
      ),
    },
    {
      additionalProperties: false,
      description:
        'Which part of the curve is returned, both ends included; the load is judged on the whole of it',
    },
  ),
)

export const CrossoverWish = share(
  'CrossoverWish',
  Type.Object(
    {
      cornerHz: quantity('Hz', 'Frequency where the drivers hand over', {
        minimum: 50,
        maximum: 20_000,
        examples: [3000],
      }),
      order: Type.Optional(
        Type.Integer({
          description: '1: one part a branch; 2: two parts, Linkwitz-Riley; 1 when left out',
          minimum: 1,
          maximum: 2,
          examples: [2],
        }),
      ),
      coilResistanceOhm: Type.Optional(
        quantity('ohm', 'Resistance of the coil to be used; taken as ideal when left out', {
          minimum: 0,
          maximum: 100,
          examples: [0.4],
        }),
      ),
      attenuationDb: Type.Optional(
        quantity('dB', 'How much quieter a driver shall be, for a pad', {
          minimum: 0.1,
          maximum: 40,
          examples: [3],
        }),
      ),
    },
    {
      additionalProperties: false,
      description:
        'A simple crossover to size; of two kinds of driver without a wiring, one of each on a channel, it becomes the wiring',
    },
  ),
)
export type CrossoverWish = Static<typeof CrossoverWish>

export const LoadImpedanceRequest = share(
  'LoadImpedanceRequest',
  Type.Object(
    {
      drivers: Type.Array(ref(Driver), { description: 'Kinds of driver', minItems: 1, maxItems: 8 }),
      wiring: Type.Optional(ref(Wiring)),
      amplifier: Type.Optional(ref(Amplifier)),
      leadOhm: Type.Optional(
        quantity('ohm', 'Resistance of the lead to the drivers, out and back; 0 when left out', {
          minimum: 0,
          maximum: 100,
          examples: [0.2],
        }),
      ),
      box: Type.Optional(ref(Box)),
      port: Type.Optional(ref(Port)),
      passiveRadiator: Type.Optional(ref(PassiveRadiator)),
      curve: Type.Optional(ref(LoadCurveRange)),
      crossover: Type.Optional(ref(CrossoverWish)),
    },
    {
      additionalProperties: false,
      description: 'Drivers and how they are wired, and the amplifier that shall drive them',
    },
  ),
)
export type LoadImpedanceRequest = Static<typeof LoadImpedanceRequest>

const load = Type.Object(
  {
    meterOhm: maybeOf(
      'ohm',
      'What a resistance meter reads at the terminals, lead included; null when a capacitor stops direct current',
    ),
    ratedOhm: outputOf(
      'ohm',
      'Rated impedance of the whole load: the printed values combined where resistance and minimum bear them out, else the largest usual value whose 80 % is not above the minimum; never above the minimum over 0.8',
    ),
    minimumOhm: outputOf('ohm', 'Lowest impedance the amplifier meets, lead included'),
    minimumAtHz: outputOf('Hz', 'Where it is lowest'),
    phaseAtMinimumDeg: outputOf('deg', 'Phase there, positive for a coil'),
    steepestPhaseDeg: outputOf('deg', 'Phase farthest from zero on the whole curve, with its sign'),
    stageOhm: outputOf(
      'ohm',
      'Resistance each half of the output stage works against where the impedance is lowest: half the load for a bridge, as which it is taken without an amplifier, all of it when single-ended',
    ),
    mayDrive: maybeTrue('Whether the amplifier may drive this load; null without an amplifier'),
    allowedMinimumOhm: maybeOf(
      'ohm',
      'Lowest impedance the amplifier allows, 80 % of its rated minimum; null without an amplifier',
    ),
  },
  { additionalProperties: false, description: 'The load as the amplifier sees it' },
)

const driverShare = Type.Object(
  {
    driver: Type.String({ description: 'Id of the driver' }),
    place: Type.Integer({ description: 'Place in the wiring, counted from 0 in the order it is written' }),
    atHz: outputOf(
      'Hz',
      'Frequency the shares hold at: where the impedance of the whole load is lowest above its last resonance; with coils or capacitors in the wiring, where this driver, in its own band above its resonance, takes its highest share of the power',
    ),
    voltageShare: outputOf('', 'Voltage across this driver over the voltage of the amplifier'),
    powerShare: outputOf('', 'Power in this driver over the power the amplifier gives'),
    powerAtVoltW: outputOf('W', 'Power in this driver with 1 V at the terminals of the load'),
    levelDb: maybeOf(
      'dB',
      'Level re the driver that takes most power, for drivers of equal sensitivity; null when no power reaches it',
    ),
  },
  { additionalProperties: false, description: 'What one driver gets' },
)

const alternative = Type.Object(
  {
    wiring: ref(Wiring),
    text: Type.String({ description: 'The wiring in words' }),
    ratedOhm: outputOf('ohm', 'Rated impedance wired so'),
    minimumOhm: outputOf('ohm', 'Lowest impedance wired so, lead included'),
    mayDrive: maybeTrue('Whether the amplifier may drive it; null without an amplifier'),
    levelDb: maybeOf(
      'dB',
      'Level re the wiring of the request at the same amplifier voltage, drivers of equal sensitivity; null when the request gives no sound there',
    ),
    powerW: maybeOf('W', 'Clean power into it; null when the supply voltage of the amplifier is not given'),
  },
  { additionalProperties: false, description: 'Another wiring of the same drivers' },
)

const crossoverParts = Type.Object(
  {
    driver: Type.String({ description: 'Id of the driver' }),
    loadOhm: outputOf(
      'ohm',
      'Resistance the parts are sized for: of the driver with its Zobel, else its impedance at the corner',
    ),
    capacitorUf: outputOf('uF', 'Exact capacitor, for the high pass and, in second order, the low pass'),
    capacitorE12Uf: outputOf('uF', 'Nearest value of the E12 series'),
    cornerWithItHz: outputOf(
      'Hz',
      'Corner with that capacitor: of a first-order branch, or in second order with the coil of this row',
    ),
    inductorMh: outputOf('mH', 'Coil, for the low pass and, in second order, the high pass'),
    zobelOhm: maybeOf(
      'ohm',
      'Resistor of the Zobel across the driver; null when its inductance is not known',
    ),
    zobelUf: maybeOf('uF', 'Capacitor in series with it; null when the inductance is not known'),
    padSeriesOhm: maybeOf('ohm', 'Series resistor of the pad; null without an attenuation'),
    padShuntOhm: maybeOf('ohm', 'Resistor of the pad across the driver; null without an attenuation'),
    padSeriesW: maybeOf(
      'W',
      'Heat in the series resistor with a full sine; null without a pad or the supply voltage of the amplifier',
    ),
    padShuntW: maybeOf('W', 'Heat in the resistor across, likewise'),
    padRatingW: maybeOf(
      'W',
      'Rating to buy for both: the next usual one above the larger of the two; music heats them with an eighth of it',
    ),
    coilLossDb: maybeOf(
      'dB',
      'Level lost in the resistance of the coil; null when that is not given, and for the driver that plays the treble, which has no coil in series',
    ),
  },
  { additionalProperties: false, description: 'Parts for one kind of driver' },
)

const loadCurve = Type.Object(
  {
    frequencyHz: curveOf('Hz', 'Frequencies'),
    impedanceOhm: curveOf('ohm', 'Modulus of the impedance'),
    phaseDeg: curveOf('deg', 'Phase of the impedance'),
  },
  { additionalProperties: false, description: 'Impedance of the whole load' },
)

export const loadImpedanceSections = {
  load,
  shares: Type.Array(driverShare, { description: 'One row a driver, in the order of the wiring' }),
  alternatives: Type.Array(alternative, {
    description:
      'Other wirings of the same drivers, highest level first; every one up to four drivers, rows and columns above; none when the wiring holds other parts than drivers',
  }),
  loadCurve,
  crossover: Type.Array(crossoverParts, {
    description: 'One row a kind of driver; none when no crossover is wished',
  }),
}

export interface LoadImpedanceSections {
  load: Static<typeof load>
  shares: Static<typeof driverShare>[]
  alternatives: Static<typeof alternative>[]
  loadCurve: Static<typeof loadCurve>
  crossover: Static<typeof crossoverParts>[]
}
