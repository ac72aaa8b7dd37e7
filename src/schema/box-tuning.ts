import { type Static, Type } from 'typebox'
import { Air } from './air.ts'
import { Box, oneOf } from './box.ts'
import { Space } from './design.ts'
import { DriverFrame, DriverParameters } from './driver.ts'
import { PassiveRadiator, Port } from './port.ts'
import { curveOf, maybeOf, outputOf, quantity } from './quantity.ts'
import { ref, share } from './shared.ts'

export const Drive = share(
  'Drive',
  Type.Object(
    {
      voltageV: Type.Optional(
        quantity('V', 'RMS voltage of the amplifier on the channel; 2.83 when left out', {
          minimum: 0.001,
          maximum: 200,
          examples: [2.83],
        }),
      ),
      sourceResistanceOhm: Type.Optional(
        quantity('ohm', 'Resistance of amplifier output and leads; 0 when left out', {
          minimum: 0,
          maximum: 1000,
          examples: [0.2],
        }),
      ),
    },
    { additionalProperties: false, description: 'What drives the channel' },
  ),
)

export const Curve = share(
  'Curve',
  Type.Object(
    {
      fromHz: Type.Optional(
        quantity('Hz', 'First frequency; 20 when left out', { minimum: 1, maximum: 20_000, examples: [20] }),
      ),
      toHz: Type.Optional(
        quantity('Hz', 'Last frequency; 20000 when left out', {
          minimum: 2,
          maximum: 40_000,
          examples: [20_000],
        }),
      ),
      points: Type.Optional(
        Type.Integer({
          description: 'Points, log-spaced, both ends included; 200 when left out',
          minimum: 2,
          maximum: 2000,
          examples: [200],
        }),
      ),
    },
    { additionalProperties: false, description: 'The frequencies of the curves' },
  ),
)
export type Curve = Static<typeof Curve>

export const BoxTuningRequest = share(
  'BoxTuningRequest',
  Type.Object(
    {
      driver: ref(DriverParameters),
      driverCount: Type.Optional(
        Type.Integer({
          description: 'Equal drivers in the box; 1 when left out',
          minimum: 1,
          maximum: 16,
          examples: [1],
        }),
      ),
      driverWiring: Type.Optional(
        oneOf(['parallel', 'series'], 'How they are connected; parallel when left out'),
      ),
      frame: Type.Optional(ref(DriverFrame)),
      box: ref(Box),
      port: Type.Optional(ref(Port)),
      passiveRadiator: Type.Optional(ref(PassiveRadiator)),
      drive: Type.Optional(ref(Drive)),
      air: Type.Optional(ref(Air)),
      space: Type.Optional(Space),
      curve: Type.Optional(ref(Curve)),
    },
    { additionalProperties: false, description: 'Driver, box and opening' },
  ),
)
export type BoxTuningRequest = Static<typeof BoxTuningRequest>

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
        effectiveLengthMm: outputOf('mm', 'Length of the moving air, ends included'),
        areaCm2: outputOf('cm2', 'Area of all ports together'),
        airSpeedMPerS: outputOf('m/s', 'Highest peak air speed in the wanted band at this drive voltage'),
        atHz: outputOf('Hz', 'Where that is'),
        pipeResonanceHz: maybeOf('Hz', 'First resonance of the tube as a pipe; null without a length'),
      },
      { additionalProperties: false, description: 'The port' },
    ),
    Type.Null({ description: 'No port' }),
  ]),
  limits: Type.Object(
    {
      bandFromHz: outputOf('Hz', 'Lowest frequency that counts: the lowest wanted note, else f3'),
      maximumSplDb: outputOf('dB', 'Highest level at 1 m that every note from there to 1 kHz can reach'),
      limitedBy: oneOf(['excursion', 'voltage', 'power', 'air-speed'], 'What ends it'),
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
        'Channel voltage that keeps the cone in its range from 10 Hz up; null when xmaxMm is not given',
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
    },
    { additionalProperties: false, description: 'Curves, one value a frequency' },
  ),
}

const BoxTuningSectionsObject = Type.Object(boxTuningSections)
export type BoxTuningSections = Static<typeof BoxTuningSectionsObject>
