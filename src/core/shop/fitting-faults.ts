import type { CutListRequest } from '../../schema/cut-list.ts'
import type { Fitting } from '../../schema/fittings.ts'
import { nearestName } from '../nearest-name.ts'
import type { Fault } from '../outcome.ts'
import { backNames } from './back.ts'
import type { Box } from './box-plan.ts'
import { frontDrivers, frontPorts, smallHoles } from './front-bodies.ts'
import { frontNames } from './holes.ts'
import { USUAL_SCREW_INSET_MM } from './panel-item.ts'

interface FittingRule {
  at: string
  broken: (fitting: Fitting) => boolean
  message: string
}

const RULES: readonly FittingRule[] = [
  {
    at: '',
    broken: ({ holeDiameterMm, cutout, board }) =>
      [holeDiameterMm, cutout, board].filter((form) => form !== undefined).length !== 1,
    message: 'give one of holeDiameterMm, cutout and board',
  },
  {
    at: '/board/screwInsetMm',
    broken: ({ board }) =>
      board !== undefined &&
      2 * (board.screwInsetMm ?? USUAL_SCREW_INSET_MM) >= Math.min(board.widthMm, board.heightMm),
    message: 'must be less than half of either side of the board, so that its screws stand at its corners',
  },
  {
    at: '/xMm',
    broken: ({ xMm, yMm }) => (xMm === undefined) !== (yMm === undefined),
    message: 'give both xMm and yMm, or none',
  },
  {
    at: '/xMm',
    broken: ({ panel, xMm }) => panel === 'front' && xMm === undefined,
    message: 'on the front a fitting has to say where: give xMm and yMm',
  },
]

/** What contradicts in fittings and placed holes, each with its place in the request. */
export function fittingFaults(request: CutListRequest, box: Box): Fault[] {
  const onFront = frontNames({
    drivers: frontDrivers(request.drivers ?? [], (frame) => frame.cutoutDiameterMm),
    ports: frontPorts(request.port, (diameterMm) => diameterMm),
    small: smallHoles(request),
    floor: false,
  })
  const known = [...onFront, ...backNames(request.passiveRadiator)]
  const fittings = (box.fittings ?? []).flatMap((fitting, index) =>
    RULES.filter(({ broken }) => broken(fitting)).map(({ at, message }) => ({
      at: `/box/fittings/${index}${at}`,
      message,
    })),
  )
  const names = [...known, ...(box.fittings ?? []).map(({ id }) => id)]
  const twice = (box.fittings ?? []).flatMap(({ id }, index) =>
    names.indexOf(id) < known.length + index
      ? [{ at: `/box/fittings/${index}/id`, message: `something else is called "${id}" already` }]
      : [],
  )
  const holes = (box.holes ?? []).flatMap(({ for: name }, index) =>
    known.includes(name) ? [] : [{ at: `/box/holes/${index}/for`, message: unknownHole(name, known) }],
  )
  return [...fittings, ...twice, ...holes]
}

function unknownHole(name: string, known: readonly string[]): string {
  const near = nearestName(name, known)
  const meant = near === undefined ? '.' : `; did you mean "${near}"?`
  return `no hole is called "${name}"${meant} There are ${known.join(', ') || 'none'}`
}
