import { hertz, litre, mm } from '../say.ts'
import { mmApart } from '../say-apart.ts'
import { LEAST_BEHIND_MAGNET_MM, LEAST_BETWEEN_BODIES_MM } from '../shop/inside-fit.ts'
import type { ShopFacts } from '../shop/shop-facts.ts'
import type { Rule } from './rule.ts'

/** Panels that ring below this are driven hard by most music, Hz. Common practice, no source. */
const LOW_RINGING_HZ = 250

/** Rules about what must clear what inside the box. */
export const insideRules: readonly Rule<ShopFacts>[] = [
  {
    code: 'magnet-hits-back',
    severity: 'blocker',
    at: ({ magnet }) => `${magnet?.at ?? '/drivers'}/frame/depthMm`,
    unit: 'mm',
    when: ({ magnet }) => magnet !== null && magnet.behindMm < 0,
    value: ({ magnet }) => magnet?.behindMm ?? 0,
    limit: () => 0,
    message: ({ magnet }) =>
      `Driver ${magnet?.id} is ${mm(magnet?.depthMm ?? 0)} deep and would stand ${mm(-(magnet?.behindMm ?? 0))} into the back board.`,
    remedies: ({ magnet }) => [
      `Make the box at least ${mm(LEAST_BEHIND_MAGNET_MM - (magnet?.behindMm ?? 0))} deeper.`,
      'Put a ring under the flange, or use a shallower driver.',
    ],
  },
  {
    code: 'magnet-near-back',
    severity: 'warning',
    at: ({ magnet }) => `${magnet?.at ?? '/drivers'}/frame/depthMm`,
    unit: 'mm',
    when: ({ magnet }) => magnet !== null && magnet.behindMm >= 0 && magnet.behindMm < LEAST_BEHIND_MAGNET_MM,
    value: ({ magnet }) => magnet?.behindMm ?? 0,
    limit: () => LEAST_BEHIND_MAGNET_MM,
    message: ({ magnet }) => {
      const [behind, least] = mmApart(magnet?.behindMm ?? 0, LEAST_BEHIND_MAGNET_MM)
      return `${behind} stay behind the magnet of ${magnet?.id}; ${least} let the air through.`
    },
    remedies: ({ magnet }) => [
      `Make the box ${mm(LEAST_BEHIND_MAGNET_MM - (magnet?.behindMm ?? 0))} deeper.`,
      'Put a ring under the flange.',
    ],
  },
  {
    code: 'tube-hits-back',
    severity: 'blocker',
    at: '/port',
    unit: 'mm',
    when: ({ tube }) => tube !== null && tube.behindMm <= 0,
    value: ({ tube }) => tube?.behindMm ?? 0,
    limit: () => 0,
    message: ({ tube }) =>
      tube?.behindMm === 0
        ? `The tube reaches ${mm(tube.insideMm)} into the box and ends at the back board, which closes it.`
        : `The tube reaches ${mm(tube?.insideMm ?? 0)} into the box, ${mm(-(tube?.behindMm ?? 0))} more than there is.`,
    remedies: () => [
      'Bend the tube, or lead it through the longest side.',
      'Use a narrower tube, which is shorter for the same tuning, or tune higher.',
    ],
  },
  {
    code: 'tube-near-back',
    severity: 'warning',
    at: '/port',
    unit: 'mm',
    when: ({ tube }) => tube !== null && tube.behindMm > 0 && tube.behindMm < tube.leastMm,
    value: ({ tube }) => tube?.behindMm ?? 0,
    limit: ({ tube }) => tube?.leastMm ?? 0,
    message: ({ tube }) => {
      const [behind, least] = mmApart(tube?.behindMm ?? 0, tube?.leastMm ?? 0)
      return `${behind} stay behind the tube; below one inner diameter, ${least}, the tuning falls.`
    },
    remedies: () => [
      'Bend the tube, or lead it out through the side.',
      'Tune a little higher, with a shorter tube.',
    ],
  },
  {
    code: 'tube-near-side',
    severity: 'warning',
    at: '/port',
    unit: 'mm',
    when: ({ tube }) => tube !== null && tube.insideMm > 0 && tube.sideMm < tube.leastSideMm,
    value: ({ tube }) => tube?.sideMm ?? 0,
    limit: ({ tube }) => tube?.leastSideMm ?? 0,
    message: ({ tube }) => {
      const [away, least] = mmApart(tube?.sideMm ?? 0, tube?.leastSideMm ?? 0)
      return `The tube runs ${away} from a wall; within half an inner diameter, ${least}, the tuning falls.`
    },
    remedies: () => [
      'Move the port away from the wall.',
      'Reckon with a tuning some per cent lower and shorten the tube by ear.',
    ],
  },
  {
    code: 'bodies-collide',
    severity: 'blocker',
    at: ({ bodies }) => bodies?.at ?? '/drivers',
    unit: 'mm',
    when: ({ bodies }) => bodies !== null && bodies.gapMm < 0,
    value: ({ bodies }) => bodies?.gapMm ?? 0,
    limit: () => 0,
    message: ({ bodies }) =>
      `Inside, ${bodies?.between.join(' and ')} want the same room: they overlap by ${mm(-(bodies?.gapMm ?? 0))}.`,
    remedies: ({ bodies }) => [
      `Move them apart by ${mm(LEAST_BETWEEN_BODIES_MM - (bodies?.gapMm ?? 0))}, on a larger front if need be.`,
      'Use a smaller driver or port, or lead the port through another panel.',
    ],
  },
  {
    code: 'bodies-close',
    severity: 'warning',
    at: ({ bodies }) => bodies?.at ?? '/drivers',
    unit: 'mm',
    when: ({ bodies }) => bodies !== null && bodies.gapMm >= 0 && bodies.gapMm < LEAST_BETWEEN_BODIES_MM,
    value: ({ bodies }) => bodies?.gapMm ?? 0,
    limit: () => LEAST_BETWEEN_BODIES_MM,
    message: ({ bodies }) =>
      `Inside, ${bodies?.between.join(' and ')} are only ${mm(bodies?.gapMm ?? 0)} apart.`,
    remedies: () => ['Move them apart.', 'Measure the magnets: round ones may still clear.'],
  },
  {
    code: 'board-thin-for-volume',
    severity: 'note',
    at: '/box/panelThicknessMm',
    unit: 'mm',
    when: ({ thicknessMm, usualThicknessMm }) => thicknessMm < usualThicknessMm,
    value: ({ thicknessMm }) => thicknessMm,
    limit: ({ usualThicknessMm }) => usualThicknessMm,
    message: ({ thicknessMm, usualThicknessMm, grossVolumeL }) =>
      `For ${litre(grossVolumeL)} of air, board of ${mm(usualThicknessMm)} or more is usual; this is ${mm(thicknessMm)}.`,
    remedies: () => ['Glue a brace across the largest panel.', 'Use thicker board.'],
  },
  {
    code: 'panel-rings-low',
    severity: 'note',
    at: '/box/panelThicknessMm',
    unit: 'Hz',
    when: ({ ringing }) => ringing !== null && ringing.supportedHz < LOW_RINGING_HZ,
    value: ({ ringing }) => ringing?.supportedHz ?? 0,
    limit: () => LOW_RINGING_HZ,
    message: ({ ringing }) =>
      `The free ${ringing?.sidesMm.map(mm).join(' by ')} of the ${ringing?.id} panel first bends between ${hertz(ringing?.supportedHz ?? 0)} and ${hertz(ringing?.clampedHz ?? 0)}, depending on how stiff its edges are held; there it is driven hard.`,
    remedies: () => [
      'Glue a brace across it: halved, it bends at nearly twice the frequency.',
      'Use thicker board: the frequency rises with the thickness.',
    ],
  },
]
