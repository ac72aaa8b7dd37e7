import { type Field, quantity } from './field.ts'

/** What a rule and a meter tell of a driver without data; below `/drivers/0`. */
export const bench: readonly Field[] = [
  quantity(
    '/dimensions/surroundDiameterMm',
    'Diameter of the cone',
    'mm',
    'From the middle of the rubber edge to its middle opposite.',
  ),
  quantity(
    '/meterOhm',
    'Resistance on a meter',
    'ohm',
    'Across the terminals, the leads of the meter taken off.',
    {
      term: 'Re',
    },
  ),
  quantity('/sdCm2', 'Cone area', 'cm2', 'Only if you know it; else it comes from the diameter.', {
    term: 'Sd',
  }),
  quantity('/ratedImpedanceOhm', 'Printed impedance', 'ohm', 'Usually 4 or 8, printed on the magnet.'),
]

export const sweeps: readonly Field[] = [
  {
    at: '/freeAir/csv',
    label: 'Readings in free air',
    note: 'One a line: Hz and ohm, as in "120 8.4"; ohm is the resistor times the voltage across the driver, over that across the resistor. The magnet held, the cone free.',
    kind: 'lines',
  },
  quantity('/withMass/massG', 'Weight stuck to the cone', 'g', 'Putty or coins, evenly; then read again.'),
  {
    at: '/withMass/sweep/csv',
    label: 'Readings with that weight',
    note: 'Again Hz and ohm. It tells how soft the suspension is.',
    kind: 'lines',
  },
  quantity(
    '/inBox/volumeL',
    'Or a small tight box behind it',
    'L',
    'Instead of the weight: the air in it, less what the driver takes up; then read again.',
  ),
  {
    at: '/inBox/sweep/csv',
    label: 'Readings on that box',
    note: 'Again Hz and ohm, the driver pressed on so that no air escapes.',
    kind: 'lines',
  },
]
