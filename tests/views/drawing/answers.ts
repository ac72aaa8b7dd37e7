import { readFileSync } from 'node:fs'
import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import type { CutListRequest } from '../../../src/schema/cut-list.ts'
import { cutListPdf } from '../../../src/views/drawing/cut-list-drawings.ts'
import type { Drawn } from '../../../src/views/drawing/job.ts'
import type { PaperSize } from '../../../src/views/drawing/paper.ts'

export interface Drawable {
  answer: Drawn
  request: CutListRequest & { name?: string }
}

/** The printed pages of an answer that has some. */
export async function printed({ answer, request }: Drawable, paper?: PaperSize): Promise<Uint8Array> {
  const bytes = await cutListPdf(answer, request, paper)
  if (bytes === null) throw new Error('nothing printed')
  return bytes
}

/** The answer to a request, as the drawings take it. */
export function drawable(request: Drawable['request']): Drawable {
  const outcome = cutList(request, { portLengthMm: 60 })
  if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
  return { answer: { ...outcome.sections, cautions: outcome.cautions }, request }
}

const shelfPair = JSON.parse(
  readFileSync(new URL('../../designs/shelf-pair.json', import.meta.url), 'utf8'),
) as Required<
  Pick<CutListRequest, 'box' | 'drivers' | 'port' | 'signal' | 'supply' | 'stock' | 'workshop'>
> & {
  name: string
  boxes: number
}

/** Two vented boxes of 120 x 240 x 160 mm with two drivers each, from one trimmed offcut. */
export function shelf(): Drawable {
  const { name, box, boxes, drivers, port, signal, supply, stock, workshop } = shelfPair
  return drawable({ name, box, boxes, drivers, port, signal, supply, stock, workshop })
}

/** A tall box whose slot and sides are taller than any sheet of paper. */
export const tower = (): Drawable =>
  drawable({
    name: 'tall tower <&> "with signs" \u03a9 \u00b5',
    box: {
      kind: 'vented',
      outer: { widthMm: 220, heightMm: 1050, depthMm: 300 },
      panelThicknessMm: 18,
      runsThrough: 'sides',
    },
    drivers: [{ ...shelfPair.drivers[0]!, count: 4 }],
    port: { shape: 'slot', slot: { widthMm: 184, heightMm: 40, onWall: true }, lengthMm: 180 },
    stock: [
      { id: 'full sheet', lengthMm: 2440, widthMm: 1220, thicknessMm: 18, trimMm: 10, grain: 'length' },
    ],
    workshop: { kerfMm: 3.2 },
  })

/** A box smaller than a hand. */
export const tiny = (): Drawable =>
  drawable({
    box: {
      kind: 'closed',
      outer: { widthMm: 60, heightMm: 80, depthMm: 50 },
      panelThicknessMm: 6,
    },
    drivers: [
      {
        id: 'main',
        parameters: {},
        frame: {
          outerDiameterMm: 40,
          cutoutDiameterMm: 34,
          boltCircleDiameterMm: 37,
          boltCount: 4,
          depthMm: 18,
        },
      },
    ],
    signal: { volumeControl: { resistanceKohm: 50 } },
    stock: [{ lengthMm: 600, widthMm: 200, thicknessMm: 6 }],
  })

/** A box mitred on every edge with one large driver on eight screws. */
export const mitred = (): Drawable =>
  drawable({
    box: {
      kind: 'closed',
      outer: { widthMm: 300, heightMm: 420, depthMm: 260 },
      panelThicknessMm: 15,
      joint: 'mitre',
      runsThrough: 'front-back',
    },
    drivers: [
      {
        id: 'main',
        parameters: {},
        frame: {
          outerDiameterMm: 206,
          cutoutDiameterMm: 186,
          boltCircleDiameterMm: 196,
          boltCount: 8,
          depthMm: 90,
        },
      },
    ],
    stock: [{ lengthMm: 1500, widthMm: 900, thicknessMm: 15 }],
  })

/** Forty plain parts of different sizes, some narrow, every third with its grain along. */
export const fortyParts = (): Drawable =>
  drawable({
    parts: Array.from({ length: 40 }, (_, index) => ({
      id: index % 5 === 0 ? `a rather long name of part ${index + 1}` : `part ${index + 1}`,
      lengthMm: 40 + ((index * 97) % 401),
      widthMm: 12 + ((index * 53) % 190),
      grain: index % 3 === 0 ? 'length' : 'any',
    })),
    stock: [{ lengthMm: 2440, widthMm: 1220, trimMm: 10, grain: 'length', count: 2 }],
    workshop: { kerfMm: 3.2 },
  })
