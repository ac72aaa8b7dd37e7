import { type Static, Type } from 'typebox'
import { oneOf } from './one-of.ts'
import { curveOf, maybeOf, outputOf } from './quantity.ts'
import { ref, share } from './shared.ts'

const ImpedancePoint = share(
  'ImpedancePoint',
  Type.Object(
    { hz: outputOf('Hz', 'Frequency'), ohm: outputOf('ohm', 'Modulus') },
    { additionalProperties: false, description: 'A point of an impedance curve' },
  ),
)

const LimitedBy = oneOf(['excursion', 'voltage', 'power', 'air-speed', 'radiator'], 'What ends the level')

export const boxTuningSections = {
  tuning: Type.Object(
    {
      fbHz: Type.Optional(outputOf('Hz', 'Tuning of a vented or passive-radiator box')),
      fcHz: Type.Optional(outputOf('Hz', 'Resonance of a closed box')),
      qtc: Type.Optional(outputOf('', 'Total Q of a closed box, its losses included')),
      qts: outputOf('', 'Total Q of the driver, source resistance included'),
      alpha: outputOf('', 'Compliance ratio: Vas of all drivers over the acoustic volume'),
      h: Type.Optional(outputOf('', 'Tuning ratio fb/fs')),
      netVolumeL: outputOf('L', 'Free air in the box'),
      acousticVolumeL: outputOf('L', 'Volume as the cone feels it, lining included'),
      referenceSplDb: outputOf('dB', 'Level at 1 m above the bass, at this drive voltage'),
      f3Hz: maybeOf('Hz', 'Half-power frequency; null when the response never falls that far'),
      f6Hz: maybeOf('Hz', '6 dB down; null likewise'),
      f10Hz: maybeOf('Hz', '10 dB down; null likewise'),
      peakDb: outputOf('dB', 'Highest point above the reference level; 0 without a peak'),
      peakHz: maybeOf('Hz', 'Where that is; null without a peak'),
      spl1WDb: outputOf('dB', 'Level at 1 m with 1 W in the resistance of the channel, above the bass'),
      spl2V83Db: outputOf('dB', 'Level at 1 m with 2.83 V on the channel, above the bass'),
      decayMs: outputOf('ms', 'Time in which the slowest ringing of the box falls by 20 dB'),
      decayPeriods: maybeOf('', 'The same in periods of f3: tight below 2, boomy above 4; null without f3'),
      nearestAlignment: Type.Object(
        {
          name: Type.String({
            description: 'Classic alignment nearest to this box; "none" when no classic one suits the driver',
          }),
          differencePct: maybeOf('percent', 'How far Q, or volume and tuning, are from it; null without one'),
          qtc: Type.Optional(outputOf('', 'Total Q of that closed box')),
          netVolumeL: Type.Optional(outputOf('L', 'Volume that alignment asks for')),
          tuningHz: Type.Optional(outputOf('Hz', 'Tuning that alignment asks for')),
          text: Type.String({ description: 'The comparison in words' }),
        },
        { additionalProperties: false, description: 'The classic box next to this one' },
      ),
    },
    { additionalProperties: false, description: 'System parameters' },
  ),
  port: Type.Union([
    Type.Object(
      {
        lengthMm: maybeOf('mm', 'Length of each tube; null when no length reaches the tuning'),
        straightMm: maybeOf('mm', 'Straight tube to cut beside the bends; null without a length'),
        effectiveLengthMm: outputOf('mm', 'Length of the moving air, ends included'),
        areaCm2: outputOf('cm2', 'Area of all ports together'),
        airSpeedMPerS: outputOf(
          'm/s',
          'Highest peak air speed from the tuning, or the lowest note that counts if that is lower, up, at this drive voltage',
        ),
        atHz: outputOf('Hz', 'Where that is'),
        pipeResonanceHz: maybeOf('Hz', 'First resonance of the tube as a pipe; null without a length'),
      },
      { additionalProperties: false, description: 'The port' },
    ),
    Type.Null({ description: 'No port' }),
  ]),
  impedance: Type.Object(
    {
      minimumOhm: outputOf('ohm', 'Lowest impedance of the channel from 10 Hz to 20 kHz'),
      minimumAtHz: outputOf('Hz', 'Where it is'),
      peaks: Type.Array(ref(ImpedancePoint), { description: 'Peaks, lowest frequency first' }),
      dips: Type.Array(ref(ImpedancePoint), { description: 'Dips, lowest frequency first' }),
    },
    { additionalProperties: false, description: 'Extremes of the impedance of the channel' },
  ),
  suitedBoxes: Type.Array(
    Type.Object(
      {
        kind: oneOf(['closed', 'vented'], 'How the back of the cone is loaded'),
        alignment: Type.String({ description: 'Name of the alignment' }),
        netVolumeL: maybeOf('L', 'Free air it asks for; null when no such box exists for this driver'),
        tuningHz: maybeOf('Hz', 'Tuning it asks for; null for a closed box'),
        f3Hz: maybeOf('Hz', 'Half-power frequency it reaches; null without a box'),
        peakDb: maybeOf('dB', 'Highest point above the mid-band; null without a box'),
        text: Type.String({ description: 'The same in words' }),
      },
      { additionalProperties: false },
    ),
    { description: 'Boxes that suit these drivers, whatever box was asked about' },
  ),
  tubes: Type.Array(
    Type.Object(
      {
        innerDiameterMm: outputOf('mm', 'Inner diameter of the tube'),
        count: Type.Integer({ description: 'Tubes of this kind in each box' }),
        lengthMm: maybeOf('mm', 'Length of each for the same tuning; null when none reaches it'),
        airSpeedMPerS: outputOf('m/s', 'Highest peak air speed in the band at this drive voltage'),
        fits: Type.Unsafe<boolean | null>({
          type: ['boolean', 'null'],
          description:
            'Whether it goes in straight with a diameter free behind it; null when the depth is not known',
        }),
        acceptable: Type.Boolean({
          description:
            'true when it reaches the tuning, fits as far as known, is long enough, and stays below 17 m/s',
        }),
      },
      { additionalProperties: false },
    ),
    { description: 'The same tuning from the tubes on hand, one to three of each' },
  ),
  directivity: Type.Object(
    {
      minus6At30DegHz: outputOf('Hz', 'Where the level 30° off axis has fallen by 6 dB, cone as a piston'),
      minus6At60DegHz: outputOf('Hz', 'The same at 60°'),
      pistonUpToHz: outputOf('Hz', 'Above this, ka = 2, a cone no longer moves as a whole'),
      pairNullAboveHz: maybeOf(
        'Hz',
        'Lowest frequency at which two neighbours can cancel in their line; null without their spacing',
      ),
      pairGainAt: Type.Unsafe<{ hz: number; powerGainDb: number } | null>({
        anyOf: [
          {
            type: 'object',
            properties: {
              hz: { type: 'number', 'x-unit': 'Hz', description: 'Frequency' },
              powerGainDb: { type: 'number', 'x-unit': 'dB', description: 'Gain' },
            },
            required: ['hz', 'powerGainDb'],
            additionalProperties: false,
          },
          { type: 'null' },
        ],
        description:
          'Power two neighbours radiate over two alone, at the lowest frequency of the band; null without their spacing',
      }),
    },
    { additionalProperties: false, description: 'Where the sound goes' },
  ),
  limits: Type.Object(
    {
      bandFromHz: outputOf('Hz', 'Lowest frequency that counts: the lowest wanted note, else f3'),
      maximumSplDb: outputOf('dB', 'Highest level at 1 m that every note from there to 1 kHz can reach'),
      limitedBy: LimitedBy,
      atHz: outputOf('Hz', 'The note at which it ends first'),
      excursionMm: outputOf('mm', 'Highest peak excursion in the band at this drive voltage'),
      excursionAtHz: outputOf('Hz', 'Where that is'),
      excursionBelowBandMm: outputOf('mm', 'Highest peak excursion below the band, down to 10 Hz'),
      xmaxMm: maybeOf('mm', 'Excursion the driver allows; null when not given'),
      protectiveHighPassHz: maybeOf(
        'Hz',
        'Lowest corner of a second-order high-pass that keeps the cone in its range at this voltage; null when none is needed or none suffices',
      ),
      safeVoltageV: maybeOf(
        'V',
        'Channel voltage that keeps cone and passive radiator in their ranges; null when neither is given',
      ),
    },
    { additionalProperties: false, description: 'How loud it goes and what ends it' },
  ),
  curves: Type.Object(
    {
      frequencyHz: curveOf('Hz', 'Frequencies, log-spaced'),
      splDb: curveOf('dB', 'Level at 1 m on axis at this drive voltage'),
      impedanceOhm: curveOf('ohm', 'Impedance of the channel, source resistance excluded'),
      impedancePhaseDeg: curveOf('deg', 'Its phase'),
      excursionMm: curveOf('mm', 'Peak excursion'),
      portAirSpeedMPerS: curveOf(
        'm/s',
        'Peak air speed in the port, or peak speed of the passive radiator; 0 without either',
      ),
      groupDelayMs: curveOf('ms', 'Group delay'),
      maximumSplDb: curveOf('dB', 'Highest level each frequency can reach'),
      limitedBy: Type.Array(LimitedBy, { description: 'What ends the level there' }),
    },
    { additionalProperties: false, description: 'Curves, one value a frequency' },
  ),
}

const BoxTuningSectionsObject = Type.Object(boxTuningSections)
export type BoxTuningSections = Static<typeof BoxTuningSectionsObject>
