import { Type } from 'typebox'
import { maybeOf, outputOf } from './quantity.ts'

/** What `/v1/power-budget` says of the reservoir capacitor. */
export const reservoir = Type.Object(
  {
    droopV: outputOf(
      'V',
      'Fall in a quarter of a 50 Hz cycle with the source away, at the sine current; at or above the supply it is empty',
    ),
    holdUpMs: outputOf('ms', 'Time it alone carries the full sine down to 90 % of the voltage'),
    lowestBurstV: maybeOf(
      'V',
      'Lowest voltage at the board in a 50 Hz burst at full power; null when it collapses',
    ),
    lowestBurstWithoutV: maybeOf('V', 'The same without the capacitor; null when it collapses'),
    helpsAboveHz: maybeOf(
      'Hz',
      'Tone above which the capacitor gives more of the ripple current than the source; null when the lead has no resistance',
    ),
    sourceShareOfRipple: maybeOf(
      '',
      'Share of the ripple current of a full 50 Hz note that the source still gives, 0 to 1; null when the lead has no resistance',
    ),
    attachPeakA: outputOf('A', 'Peak current when it is plugged in empty'),
    attachChargeMc: outputOf('mC', 'Charge it takes'),
    chargeAbove100MaMc: outputOf(
      'mC',
      'Part of that charge that flows above 100 mA, which the port standard counts',
    ),
    timesOverAttachLimit: outputOf(
      '',
      'That part over the 50 uC that the standard of USB ports allows; other sources know no such limit',
    ),
    lawfulLimiterOhm: outputOf(
      'ohm',
      'Series resistance that keeps the current at 100 mA, bypassed afterwards',
    ),
    softStartMs: outputOf('ms', 'Time a soft start at 100 mA takes'),
    portDipV: outputOf('V', 'Dip of a USB port that holds 120 uF of its own, before its regulator answers'),
    ratingMarginV: maybeOf(
      'V',
      'Voltage marked on the capacitor less the highest that the source may have; null when it is not given',
    ),
    leastRatingV: outputOf('V', 'Least voltage to look for on the capacitor'),
  },
  { additionalProperties: false, description: 'The reservoir capacitor' },
)
