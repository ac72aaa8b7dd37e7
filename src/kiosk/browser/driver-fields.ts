import { count, type Field, quantity, text, yesNo } from './field.ts'

/** Below `/drivers/N`. */
export const driverName: Field = text(
  '/id',
  'Name',
  'As you tell it from the others: woofer, say. Its wiring follows.',
)

export const driverCount: Field = count(
  '/count',
  'How many in each box',
  'Drivers of this kind in one box.',
  {
    usual: '1',
  },
)

/** Asked where there are several kinds: only one of them can share the air of the box. */
export const ownBack: Field = yesNo(
  '/sharesBox',
  'It has its own closed back',
  'Most tweeters do; then it needs no air of the box.',
  false,
)

export const driverData: readonly Field[] = [
  quantity('/parameters/fsHz', 'Own resonance', 'Hz', 'Where the cone swings by itself, in free air.', {
    term: 'fs',
  }),
  count('/parameters/qts', 'Damping, total', 'Total Q; or give the two below instead.', { term: 'Qts' }),
  count('/parameters/qes', 'Damping by the motor', 'Electrical Q; the total is enough where it is printed.', {
    term: 'Qes',
  }),
  count('/parameters/qms', 'Damping by the suspension', 'Mechanical Q.', { term: 'Qms', usual: '3' }),
  quantity(
    '/parameters/vasL',
    'Softness as a volume of air',
    'L',
    'Air that is as stiff as the suspension.',
    {
      term: 'Vas',
    },
  ),
  quantity(
    '/parameters/sdCm2',
    'Cone area',
    'cm2',
    'From the middle of the rubber edge to its middle opposite.',
    {
      term: 'Sd',
    },
  ),
  quantity('/parameters/reOhm', 'Resistance on a meter', 'ohm', 'A multimeter across the terminals.', {
    term: 'Re',
  }),
  quantity('/parameters/xmaxMm', 'Clean travel, one way', 'mm', 'How far the cone may move from rest.', {
    term: 'xmax',
  }),
  quantity('/parameters/ratedPowerW', 'Rated power', 'W', 'Printed on the driver, often too high.'),
  quantity(
    '/parameters/ratedImpedanceOhm',
    'Printed impedance',
    'ohm',
    'Usually 4 or 8, printed on the magnet.',
  ),
  yesNo('/guessed', 'These data are a guess', 'The answer is then never "ready": measure before you saw.'),
]

export const driverMoreData: readonly Field[] = [
  quantity('/parameters/leMh', 'Coil inductance', 'mH', 'Makes the highest notes softer.', { term: 'Le' }),
  quantity('/parameters/mmsG', 'Moving mass', 'g', 'Cone and coil with the air that moves along.', {
    term: 'Mms',
  }),
  quantity('/parameters/blTm', 'Motor strength', 'T.m', 'Field times length of wire in it.', { term: 'Bl' }),
]

export const driverSize: readonly Field[] = [
  quantity('/frame/outerDiameterMm', 'Outer diameter', 'mm', 'Across the whole flange.'),
  quantity('/frame/cutoutDiameterMm', 'Hole it needs', 'mm', 'Across the basket, where it goes through.'),
  quantity('/frame/depthMm', 'Depth', 'mm', 'From the front of the flange to the back of the magnet.'),
  quantity(
    '/frame/boltCircleDiameterMm',
    'Circle of the screw holes',
    'mm',
    'From one hole to the one opposite.',
  ),
  count('/frame/boltCount', 'Screw holes', 'How many there are on that circle.'),
  quantity(
    '/frame/flangeThicknessMm',
    'Thickness of the flange',
    'mm',
    'Decides how deep a rebate would be.',
  ),
  quantity('/frame/magnetDiameterMm', 'Diameter of the magnet', 'mm', 'So that neighbours do not touch.'),
  quantity(
    '/frame/displacementL',
    'Air it takes up',
    'L',
    'Dip it in a measuring jug in a bag, or leave empty.',
  ),
]
