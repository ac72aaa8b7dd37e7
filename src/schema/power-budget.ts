import { type Static, Type } from 'typebox'
import { Wants } from './design.ts'
import { gain } from './gain.ts'
import { indicator } from './indicator.ts'
import { oneOf } from './one-of.ts'
import { Amplifier, Programme, Signal, Supply } from './power.ts'
import { maybeOf, maybeTrue, outputOf, quantity } from './quantity.ts'
import { reservoir } from './reservoir.ts'
import { ref, share } from './shared.ts'

export const PowerBudgetRequest = share(
  'PowerBudgetRequest',
  Type.Object(
    {
      amplifier: ref(Amplifier),
      loadOhm: Type.Optional(
        quantity('ohm', "Rated impedance on one channel; the amplifier's rated minimum when left out", {
          minimum: 0.1,
          maximum: 10_000,
          examples: [8],
        }),
      ),
      minimumOhm: Type.Optional(
        quantity('ohm', 'Lowest impedance of that load; 80 % of loadOhm when left out', {
          minimum: 0.01,
          maximum: 10_000,
          examples: [6.8],
        }),
      ),
      driverRatedPowerW: Type.Optional(
        quantity('W', 'Rated power of the driver that is nearest to its limit', {
          minimum: 0.01,
          maximum: 5000,
          examples: [12],
        }),
      ),
      driverPowerShare: Type.Optional(
        Type.Number({
          description: 'Share of the power of a channel that this driver takes; 1 when left out',
          minimum: 0,
          maximum: 1,
          examples: [0.5],
        }),
      ),
      sensitivity1WDb: Type.Optional(
        quantity('dB', 'Level of one channel with 1 W into its load at 1 m', {
          minimum: 40,
          maximum: 130,
          examples: [85],
        }),
      ),
      supply: ref(Supply),
      signal: Type.Optional(ref(Signal)),
      programme: Type.Optional(Programme),
      wants: Type.Optional(ref(Wants)),
    },
    {
      additionalProperties: false,
      description: 'Amplifier, the load on one channel, what feeds it and what is played',
    },
  ),
)
export type PowerBudgetRequest = Static<typeof PowerBudgetRequest>

const power = Type.Object(
  {
    cleanPowerW: outputOf('W', 'Sine power a channel just before clipping, at the voltage of the source'),
    cleanVoltageV: outputOf('V', 'RMS voltage at the load then'),
    peakCurrentA: outputOf('A', 'Peak current of one channel where the impedance is lowest'),
    powerAt10PercentW: outputOf('W', 'Power at 10 % distortion, as board makers like to state it'),
    cleanPowerOnLeadW: maybeOf(
      'W',
      'Clean power with the voltage that a full sine on all channels leaves at the board; null when the lead cannot deliver it',
    ),
    reachedPowerW: outputOf(
      'W',
      'Sine power a channel at full volume: the clean power, or less when the audio source cannot drive the amplifier there',
    ),
    programmePowerW: outputOf('W', 'Average power a channel on the programme at full volume'),
    limitedBy: oneOf(
      ['clipping', 'source-level', 'supply-current'],
      'What ends the loudness: the clip point of the amplifier, the level of the audio source, or the current of the supply',
    ),
    claimedPowerW: maybeOf('W', "The maker's claim; null when none was given"),
    claimedCleanPowerW: maybeOf(
      'W',
      'Clean power that such a claim means when it was made at 10 % distortion, as usual; null when none was given',
    ),
    largestClaimW: outputOf(
      'W',
      'Most that can be claimed on this supply: 1.3 times the lossless power into the load or, when that is lower, the rated minimum of the amplifier',
    ),
    claimedPossible: maybeTrue('Whether that claim is possible at all on this supply; null without a claim'),
    clipMarginDb: maybeOf(
      'dB',
      'How far the highest level of the audio source stays below the clip point with the knob open; negative: it clips; null when no signal is described',
    ),
    driverPowerW: outputOf('W', 'Clean power that reaches the driver that takes most'),
    outputDcV: maybeOf(
      'V',
      'Direct voltage a single-ended output rests at on one supply, half of it; null for a bridge, whose two wires rest at the same voltage',
    ),
    outputCapacitorUf: maybeOf(
      'uF',
      'Least capacitor between a single-ended output and the load, 3 dB down at the lowest wanted note, 40 Hz when none is given; null for a bridge',
    ),
  },
  { additionalProperties: false, description: 'What one channel can give' },
)

const supply = Type.Object(
  {
    voltageV: outputOf('V', 'Voltage of the source used here'),
    highestVoltageV: outputOf('V', 'Highest voltage the source may have: a full pack, else the same'),
    lowestVoltageV: outputOf('V', 'Lowest voltage the source may have: an empty pack, else the same'),
    levelSpanDb: maybeOf('dB', 'Level lost from a full pack to an empty one; null for other sources'),
    lowestSocketV: maybeOf(
      'V',
      'Least voltage that the standard lets the socket give; null for a source that is no USB socket',
    ),
    lowestLawfulBoardV: maybeOf(
      'V',
      'What then is left at the board on the programme with the lead described, else the least that the standard lets a lead leave; null as above, or when the lead cannot deliver it',
    ),
    currentLimitA: maybeOf('A', 'Current the source can give; null when nothing is known of it'),
    idleA: outputOf('A', 'Current without signal, indicator included'),
    programmeA: outputOf(
      'A',
      'Average current on the programme at full volume; squashed music comes nearer to eighthPowerA',
    ),
    eighthPowerA: outputOf(
      'A',
      'Average current at an eighth of the clean power, the normal operation of the safety standard',
    ),
    sineA: outputOf('A', 'Average current with a full sine on all channels'),
    worstA: outputOf(
      'A',
      'The same at the highest voltage of the source, a full pack: what lead, fuse and switch must stand',
    ),
    peakA: outputOf('A', 'Peak of the supply current in a full sine'),
    boardVoltageV: maybeOf(
      'V',
      'Voltage left at the board on the programme; null when the lead cannot deliver it',
    ),
    boardVoltageAtPeakV: maybeOf(
      'V',
      'Voltage left at the peak of a bass note without a reservoir; null when the lead cannot deliver it',
    ),
    brownOutMarginV: maybeOf(
      'V',
      'Voltage at the board in the peak of a bass note, behind the reservoir when there is one, less the least the board works on; null when the lead cannot deliver it',
    ),
    cableOhm: outputOf('ohm', 'Resistance of the supply lead, out and back, contacts included'),
    leastAreaMm2: maybeOf(
      'mm2',
      'Least cross-section of a supply lead of that length that loses 5 % of the voltage in a full sine; null without a length, or when the plugs alone lose more',
    ),
    leadGaugeAwg: maybeOf(
      'AWG',
      'Thinnest usual gauge of that cross-section or more; null as above, or when none is that thick',
    ),
    largestDeliverableW: maybeOf('W', 'Most power the lead can deliver at all; null without resistance'),
    marginA: maybeOf('A', 'Current limit less the programme current; null when the limit is not known'),
    runningTimeH: maybeOf('h', 'Time at an eighth of the clean power; null without a capacity'),
    switchesOffWhenQuiet: maybeTrue(
      'Whether a power bank switches itself off in a pause; null for other sources',
    ),
    keepAliveOhm: maybeOf(
      'ohm',
      'Resistor across the supply that keeps the bank awake; null when not needed',
    ),
    keepAliveW: maybeOf('W', 'Heat in that resistor; null when not needed'),
    switchA: outputOf(
      'A',
      'Direct-current rating of a switch to buy: the next usual one not below worstA; the inrush of a reservoir, attachPeakA, comes on top unless it is limited or taken before the switch',
    ),
    fuseA: outputOf(
      'A',
      'Fuse for the full sine: the next usual value that is loaded to 75 % at most; a source of a lower current limit gives in before it blows',
    ),
  },
  { additionalProperties: false, description: 'What the source must give and what arrives' },
)

const loudness = Type.Object(
  {
    peakDb: outputOf('dB', 'Level at the listener of a sine on all channels at full volume'),
    programmeDb: maybeOf(
      'dB',
      'Average level at the listener on the programme at full volume, peaks just clean at the most; null when the source of current does not even carry the idle board',
    ),
    distanceM: outputOf('m', 'Distance it holds at'),
    wantedDb: maybeOf('dB', 'Level wanted; null when none was given'),
    marginDb: maybeOf(
      'dB',
      'Average level less the level wanted, which is how far below clipping the peaks then stay; null when none was given, or as above',
    ),
    safeHoursADay: outputOf(
      '',
      'Hours of listening a day at that average by the 85 dB, 8 h, 3 dB rule, 24 at most',
    ),
  },
  { additionalProperties: false, description: 'How loud it gets' },
)

const orNull = <T>(section: object, description: string) =>
  Type.Unsafe<T | null>({ anyOf: [section, { type: 'null' }], description })

export const powerBudgetSections = {
  power,
  supply,
  reservoir: orNull<Static<typeof reservoir>>(reservoir, 'The reservoir capacitor; null when there is none'),
  indicator: orNull<Static<typeof indicator>>(indicator, 'The power indicator; null when there is none'),
  gain: orNull<Static<typeof gain>>(gain, 'From the source to the output; null when no signal is described'),
  loudness: orNull<Static<typeof loudness>>(
    loudness,
    'How loud it gets; null without sensitivity1WDb where nothing else tells the sensitivity',
  ),
}

export interface PowerBudgetSections {
  power: Static<typeof power>
  supply: Static<typeof supply>
  reservoir: Static<typeof reservoir> | null
  indicator: Static<typeof indicator> | null
  gain: Static<typeof gain> | null
  loudness: Static<typeof loudness> | null
}
