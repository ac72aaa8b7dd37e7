import { choice, count, type Field, quantity } from './field.ts'

/** Below `/stock/N`. */
export const board: readonly Field[] = [
  quantity('/lengthMm', 'Length', 'mm', 'The longer side.'),
  quantity('/widthMm', 'Width', 'mm', 'The shorter side.'),
  quantity('/thicknessMm', 'Thickness', 'mm', 'As measured.'),
  count('/count', 'How many', 'Boards of this size.', { usual: '1' }),
]

export const boardMore: readonly Field[] = [
  choice(
    '/material',
    'What it is',
    'Decides mass and screw holes.',
    [
      { value: 'plywood', label: 'Plywood' },
      { value: 'mdf', label: 'Fibreboard (MDF)' },
      { value: 'particleboard', label: 'Chipboard' },
      { value: 'hdf', label: 'Hard fibreboard (HDF)' },
      { value: 'softwood', label: 'Softwood' },
      { value: 'hardwood', label: 'Hardwood' },
    ],
    { usual: 'plywood' },
  ),
  choice(
    '/grain',
    'Grain',
    'Which way the figure runs.',
    [
      { value: 'none', label: 'None' },
      { value: 'length', label: 'Along the length' },
      { value: 'width', label: 'Along the width' },
    ],
    { usual: 'none' },
  ),
  quantity('/trimMm', 'Trim each edge by', 'mm', 'Torn or dented edges come off first.', { usual: '0' }),
]

export const tools: readonly Field[] = [
  quantity('/workshop/kerfMm', 'Width of the saw cut', 'mm', 'Of the blade; look at its label.', {
    term: 'kerf',
    usual: '2.4',
  }),
  {
    at: '/workshop/holeSawsMm',
    label: 'Hole saws on hand, mm',
    note: 'Their diameters, parted by blanks.',
    kind: 'numbers',
  },
]

export const screws: readonly Field[] = [
  quantity(
    '/workshop/screws/panel/diameterMm',
    'Box screws: diameter',
    'mm',
    'Over the thread; empty to only glue.',
  ),
  quantity('/workshop/screws/panel/lengthMm', 'Box screws: length', 'mm', 'About two and a half boards.'),
  quantity('/workshop/screws/driver/diameterMm', 'Driver screws: diameter', 'mm', 'Over the thread.'),
  quantity(
    '/workshop/screws/driver/lengthMm',
    'Driver screws: length',
    'mm',
    'Must not come out at the back.',
  ),
  quantity('/workshop/edging/widthMm', 'Edging strip: width', 'mm', 'Iron-on or glued; empty for none.'),
  quantity('/workshop/edging/thicknessMm', 'Edging strip: thickness', 'mm', 'Comes off the saw size.'),
]

export const hopes: readonly Field[] = [
  {
    at: '/name',
    label: 'Name of the build',
    note: 'Stands on every sheet.',
    kind: 'text',
  },
  quantity('/wants/lowestHz', 'Lowest note wanted', 'Hz', 'A bass guitar goes to 41 Hz, a voice to 100 Hz.'),
  quantity('/wants/loudnessDb', 'How loud', 'dB', '75 dB talks over music, 88 dB is loud at home.'),
  quantity('/wants/listeningDistanceM', 'How far away', 'm', 'From box to listener.', { usual: '1' }),
  choice(
    '/programme',
    'What is played',
    'Sets how much current it takes on average.',
    [
      { value: 'music', label: 'Music' },
      { value: 'compressed-music', label: 'Loud pop, radio' },
      { value: 'speech', label: 'Speech' },
      { value: 'sine', label: 'Test tones' },
    ],
    { usual: 'music' },
  ),
]
