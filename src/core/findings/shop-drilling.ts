import { mm } from '../say.ts'
import { mmApart } from '../say-apart.ts'
import { DRILL_CAUTION } from '../shop/cautions.ts'
import { LEAST_COVER_MM, LEAST_LAND_MM } from '../shop/hole-saw.ts'
import type { ShopFacts } from '../shop/shop-facts.ts'
import type { Rule } from './rule.ts'

/** Least distances of a face screw in fibreboard. European MDF industry guidance. */
const FACE_SCREW_EDGE_MM = 12
const FACE_SCREW_CORNER_MM = 25

const names = (all: readonly string[]): string => all.join(', ')

/** Rules about hole saws and driver screws. */
export const drillingRules: readonly Rule<ShopFacts>[] = [
  {
    code: 'saw-eats-screws',
    severity: 'warning',
    at: '/workshop/holeSawsMm',
    unit: 'mm',
    when: ({ land }) => land !== null && land.landMm < LEAST_LAND_MM,
    value: ({ land }) => land?.landMm ?? 0,
    limit: () => LEAST_LAND_MM,
    message: ({ land }) =>
      `Only ${mm(land?.landMm ?? 0)} of wood stay between the ${mm(land?.holeMm ?? 0)} hole of ${land?.id} and its screws.`,
    remedies: () => ['Use the next smaller saw and file.', 'Use through bolts with nuts in place of screws.'],
    caution: DRILL_CAUTION,
  },
  {
    code: 'flange-covers-little',
    severity: 'warning',
    at: '/workshop/holeSawsMm',
    unit: 'mm',
    when: ({ cover }) => cover !== null && cover.coverMm < LEAST_COVER_MM,
    value: ({ cover }) => cover?.coverMm ?? 0,
    limit: () => LEAST_COVER_MM,
    message: ({ cover }) =>
      `The flange of ${cover?.id} covers only ${mm(cover?.coverMm ?? 0)} around its hole.`,
    remedies: () => ['Seal under the flange with a bead of putty.', 'Use the next smaller saw and file.'],
  },
  {
    code: 'hole-to-file',
    severity: 'note',
    at: '/workshop/holeSawsMm',
    unit: 'mm',
    when: ({ filed }) => filed !== null,
    value: ({ filed }) => filed?.fileMm ?? 0,
    limit: () => 0,
    message: ({ filed }) =>
      `The next saw up would eat the screws of ${filed?.id}: take the smaller one and file ${mm(filed?.fileMm ?? 0)} all round.`,
    remedies: () => ['File with a half-round rasp, checking against the driver.'],
    caution: DRILL_CAUTION,
  },
  {
    code: 'no-hole-saw',
    severity: 'note',
    at: '/workshop/holeSawsMm',
    when: ({ noSaw }) => noSaw.length > 0,
    message: ({ noSaw }) => `No hole saw on hand serves for ${names(noSaw)}.`,
    remedies: () => ['Cut by fretsaw, or by router on a template.', 'Borrow a saw of the size.'],
    caution: DRILL_CAUTION,
  },
  {
    code: 'screw-through',
    severity: 'blocker',
    at: '/workshop/screws/driver',
    unit: 'mm',
    when: ({ driverScrew }) => driverScrew !== null && driverScrew.lengthMm > driverScrew.longestMm,
    value: ({ driverScrew }) => driverScrew?.lengthMm ?? 0,
    limit: ({ driverScrew }) => driverScrew?.longestMm ?? 0,
    message: ({ driverScrew, thicknessMm }) => {
      const [screw, longest] = mmApart(driverScrew?.lengthMm ?? 0, driverScrew?.longestMm ?? 0)
      return `The driver screws of ${screw} are too long for ${mm(thicknessMm)} of board under a flange of ${mm(driverScrew?.flangeMm ?? 0)}: ${longest} at most.`
    },
    remedies: ({ driverScrew }) => [
      `Use screws up to ${mm(driverScrew?.longestMm ?? 0)}, or washers under the heads.`,
      'Clip the points, or use M3 bolts with nuts.',
    ],
  },
  {
    code: 'face-screw-near-edge',
    severity: 'warning',
    at: '/drivers',
    unit: 'mm',
    when: ({ faceScrew }) => faceScrew !== null && faceScrew.edgeMm < FACE_SCREW_EDGE_MM,
    value: ({ faceScrew }) => faceScrew?.edgeMm ?? 0,
    limit: () => FACE_SCREW_EDGE_MM,
    message: ({ faceScrew }) => {
      const [away, least] = mmApart(faceScrew?.edgeMm ?? 0, FACE_SCREW_EDGE_MM)
      return `A driver screw sits ${away} from an edge; fibreboard splits below ${least}.`
    },
    remedies: () => [
      'Drill the pilot to the full core size, or use bolts.',
      'Turn the driver so that no screw points at the edge.',
    ],
  },
  {
    code: 'face-screw-near-corner',
    severity: 'warning',
    at: '/drivers',
    unit: 'mm',
    when: ({ faceScrew }) => faceScrew !== null && faceScrew.cornerMm < FACE_SCREW_CORNER_MM,
    value: ({ faceScrew }) => faceScrew?.cornerMm ?? 0,
    limit: () => FACE_SCREW_CORNER_MM,
    message: ({ faceScrew }) => {
      const [away, least] = mmApart(faceScrew?.cornerMm ?? 0, FACE_SCREW_CORNER_MM)
      return `A driver screw sits ${away} from a corner; fibreboard splits below ${least}.`
    },
    remedies: () => ['Drill the pilot to the full core size, or use bolts.'],
  },
]
