import type { SizeWay } from './box-way.ts'
import { choice, count, type Field, quantity } from './field.ts'

export const boxCount: Field = count('/boxes', 'How many boxes', 'Equal boxes in the set, two for a pair.', {
  usual: '1',
})

export const boxKind: Field = choice(
  '/box/kind',
  'What kind of box',
  'Closed is simple and forgiving; a tube gives more bass, and must be tuned.',
  [
    { value: 'closed', label: 'Closed' },
    { value: 'vented', label: 'With a tube (vented)' },
    { value: 'passive-radiator', label: 'With a passive cone' },
  ],
)

const sides = (base: string, where: string): readonly Field[] => [
  quantity(`${base}/widthMm`, 'Width', 'mm', `Left to right, ${where}.`),
  quantity(`${base}/heightMm`, 'Height', 'mm', `Bottom to top, ${where}.`),
  quantity(`${base}/depthMm`, 'Depth', 'mm', `Front to back, ${where}.`),
]

/** How the size of the box is given, and the fields of each way; exactly one stands in the design. */
export const SIZES = {
  outer: { label: 'Outside measures', fields: sides('/box/outer', 'over all') },
  inner: { label: 'Inside measures', fields: sides('/box/inner', 'between the panels') },
  netVolumeL: {
    label: 'Volume of air',
    fields: [
      quantity('/box/netVolumeL', 'Free air inside', 'L', 'Without drivers and tubes.', {
        term: 'net volume',
      }),
      count('/box/proportions/width', 'Share of the width', 'Any scale: 1 : 1.6 : 1.25 looks good.'),
      count('/box/proportions/height', 'Share of the height', 'Any scale.'),
      count('/box/proportions/depth', 'Share of the depth', 'Any scale.'),
    ],
  },
} satisfies Record<SizeWay, { label: string; fields: readonly Field[] }>

export const boxMake: readonly Field[] = [
  quantity('/box/panelThicknessMm', 'Thickness of the board', 'mm', 'Measure it: 12 mm board is often 11.6.'),
  choice(
    '/box/joint',
    'How the panels meet',
    'Butt joints need the least tools.',
    [
      { value: 'butt', label: 'Edge against face (butt)' },
      { value: 'mitre', label: 'Both cut at 45° (mitre)' },
      { value: 'rebate', label: 'Stepped edge (rebate)' },
    ],
    { usual: 'butt' },
  ),
  choice(
    '/box/lining',
    'Lining inside',
    'Felt or wadding takes the hollow sound away.',
    [
      { value: 'none', label: 'None' },
      { value: 'walls', label: 'Walls lined' },
      { value: 'filled', label: 'Filled loosely' },
    ],
    { usual: 'none' },
  ),
]

export const boxMore: readonly Field[] = [
  choice(
    '/space',
    'Where it stands',
    'Close to a wall the bass is louder.',
    [
      { value: 'half', label: 'At a wall or on a shelf (half space)' },
      { value: 'full', label: 'Free in the room (full space)' },
      { value: 'baffle', label: 'Free, with the front counted (baffle step)' },
    ],
    { usual: 'half space' },
  ),
  quantity('/box/electronicsL', 'Air the amplifier takes up', 'L', 'If it sits inside the box.'),
]

export const tube: readonly Field[] = [
  quantity('/port/innerDiameterMm', 'Inner diameter of the tube', 'mm', 'What is on hand: pipe, card tube.'),
  quantity('/port/outerDiameterMm', 'Outer diameter of the tube', 'mm', 'Decides the hole.'),
  count('/port/count', 'How many tubes', 'In each box.', { usual: '1' }),
]

/** Tuning or length: the other one is worked out. */
export const tubeTuning: Field = quantity(
  '/port/tuningHz',
  'Tune the box to',
  'Hz',
  'The length of the tube is then worked out.',
  { term: 'fb' },
)
export const tubeLength: Field = quantity(
  '/port/lengthMm',
  'Length of the tube',
  'mm',
  'The tuning is then worked out.',
)

export const radiator: readonly Field[] = [
  count('/passiveRadiator/count', 'How many passive cones', 'In each box.', { usual: '1' }),
  quantity('/passiveRadiator/fsHz', 'Own resonance', 'Hz', 'Of the passive cone in free air.', {
    term: 'fs',
  }),
  quantity('/passiveRadiator/vasL', 'Softness as a volume of air', 'L', 'Of the passive cone.', {
    term: 'Vas',
  }),
  quantity('/passiveRadiator/sdCm2', 'Cone area', 'cm2', 'Of the passive cone.', { term: 'Sd' }),
  count('/passiveRadiator/qms', 'Damping by the suspension', 'Of the passive cone.', { term: 'Qms' }),
  quantity('/passiveRadiator/xmaxMm', 'Clean travel, one way', 'mm', 'Of the passive cone.', {
    term: 'xmax',
  }),
  quantity('/passiveRadiator/addedMassG', 'Weight added to it', 'g', 'A washer or putty lowers the tuning.'),
]
