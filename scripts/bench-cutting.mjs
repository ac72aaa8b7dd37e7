// Lays out every published instance and prints stock against the best on record and the proved bound, by set.
//   node scripts/bench-cutting.mjs [seconds of effort, 1] [sets, parted by commas]
import { readFile } from 'node:fs/promises'
import { availableParallelism } from 'node:os'
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads'
import { MaxRectsPacker, PACKING_LOGIC } from 'maxrects-packer/dist/maxrects-packer.mjs'

const DATA = new URL('../tests/outside/cutting/', import.meta.url)
const read = async (name) => JSON.parse(await readFile(new URL(`${name}.json`, DATA), 'utf8'))
const CLASSES = Array.from({ length: 10 }, (_, i) => `class-${String(i + 1).padStart(2, '0')}`)
const SETS = [
  ...CLASSES,
  'several-stocks',
  'cutting-stock',
  'made-zero-waste',
  'free-only',
  'strip-c',
  'knapsack',
  'tiny',
]
const UNLIMITED = 1000

/** Every instance as a request of the layout engine. */
const parts = (rows) => rows.map(([lengthMm, widthMm, count = 1]) => ({ lengthMm, widthMm, count }))
const sheet = ([lengthMm, widthMm], count = UNLIMITED) => ({ lengthMm, widthMm, count })

const area = ({ lengthMm, widthMm }) => lengthMm * widthMm
const sum = (list, of) => list.reduce((total, item) => total + of(item), 0)
const used = (laid, stock, of) => sum(laid.sheets, (one) => of(stock[one.stock]))
const placedArea = (laid, given) => sum(laid.sheets, (one) => sum(one.parts, ({ part }) => area(given[part])))

/** The fewest sheets of a general packing library that may place freely: the better of its two rules. */
function byLibrary(given, [width, height]) {
  const rectangles = given.flatMap(({ lengthMm, widthMm, count }) =>
    Array.from({ length: count }, () => ({ width: lengthMm, height: widthMm })),
  )
  const logics = [PACKING_LOGIC.MAX_AREA, PACKING_LOGIC.MAX_EDGE]
  return Math.min(
    ...logics.map((logic) => {
      const packer = new MaxRectsPacker(width, height, 0, {
        smart: false,
        pot: false,
        square: false,
        allowRotation: true,
        logic,
      })
      packer.addArray(rectangles.map((one) => ({ ...one })))
      return packer.bins.length
    }),
  )
}

/** Equal sheets, turning allowed. */
function byClass({ parts: rows, sheet: size, bestGuillotine: best, lowerBound: bound }, lay) {
  const given = parts(rows)
  return { ours: lay(given, [sheet(size)]).sheets.length, best, bound, library: byLibrary(given, size) }
}

/** Ours, the best on record and the bound of one instance of a set; less is better, except in the knapsack. */
const MEASURES = {
  ...Object.fromEntries(CLASSES.map((name) => [name, byClass])),
  'several-stocks': (
    { stock: rows, partArea: filled, lowerBoundStockArea: bound, group, ...instance },
    lay,
  ) => {
    const stock = rows.map(([lengthMm, widthMm, count]) => ({ lengthMm, widthMm, count }))
    return { ours: used(lay(parts(instance.parts), stock), stock, area), bound, filled, group }
  },
  'cutting-stock': ({ stock: rows, bestCost: best, lowerBoundCost: bound, ...instance }, lay) => {
    const stock = rows.map(([lengthMm, widthMm, cost]) => ({ lengthMm, widthMm, cost, count: UNLIMITED }))
    return { ours: used(lay(parts(instance.parts), stock), stock, ({ cost }) => cost), best, bound }
  },
  'made-zero-waste': ({ parts: rows, sheet: size, trim, kerf, optimum }, lay) => {
    const given = rows.map(([lengthMm, widthMm, turns]) => ({
      lengthMm,
      widthMm,
      grain: turns === 1 ? 'any' : 'length',
    }))
    const stock = [{ ...sheet(size), trimMm: trim, grain: 'length' }]
    return { ours: lay(given, stock, kerf).sheets.length, best: optimum, bound: optimum }
  },
  'free-only': ({ parts: rows, sheet: size, lowerBoundGuillotine: bound }, lay) => ({
    ours: lay(parts(rows), [sheet(size)]).sheets.length,
    bound,
  }),
  'strip-c': ({ parts: rows, stripWidth, optimumLengthFree: bound }, lay) => {
    const holds = (length) => lay(parts(rows), [sheet([length, stripWidth], 1)]).notPlaced.size === 0
    let length = bound
    while (!holds(length)) length += Math.max(1, Math.round(bound / 100))
    return { ours: length, bound }
  },
  // The engine knows no values: only instances whose values are the areas can be held against it.
  knapsack: ({ parts: rows, sheet: size, anyPackingRotated }, lay) => {
    if (rows.some(([length, width, , value]) => value !== length * width)) return {}
    const given = parts(rows)
    return {
      ours: placedArea(lay(given, [sheet(size, 1)]), given),
      bound: anyPackingRotated ?? area(sheet(size)),
    }
  },
  tiny: ({ parts: rows, stock, kerfMm, sheets }, lay) => {
    const laid = lay(rows, stock, kerfMm)
    return { ours: (laid.notPlaced.size > 0 ? null : laid.sheets.length) === sheets ? 0 : 1, bound: 0 }
  },
}

function report(set, rows) {
  const total = (name) => sum(rows, (row) => row[name] ?? 0)
  const over = (name) => `${((100 * total('ours')) / total(name) - 100).toFixed(2)} %`
  const line = [
    `${set.padEnd(16)} ${String(rows.length).padStart(3)} instances: ours ${total('ours')}`,
    `bound ${total('bound')}`,
  ]
  if (rows[0]?.best !== undefined) line.push(`best known ${total('best')} (${over('best')})`)
  if (rows[0]?.library !== undefined) line.push(`packing library, free placement ${total('library')}`)
  if (rows[0]?.filled === undefined && set !== 'tiny' && total('bound') > 0)
    line.push(`over bound ${over('bound')}`)
  line.push(`${(total('ms') / rows.length / 1000).toFixed(2)} s each`)
  console.log(line.join(', '))
  for (const group of new Set(rows.flatMap((row) => row.group ?? []))) {
    const own = rows.filter((row) => row.group === group)
    console.log(
      `  ${group}: ${(sum(own, ({ filled, ours }) => (100 * filled) / ours) / own.length).toFixed(1)} % of the stock area used`,
    )
  }
}

async function main() {
  const [seconds = '1', only] = process.argv.slice(2)
  const sets = only === undefined ? SETS : only.split(',')
  const tasks = (
    await Promise.all(sets.map(async (set) => (await read(set)).map((instance) => ({ set, instance }))))
  ).flat()
  const results = []
  const work = async () => {
    const worker = new Worker(new URL(import.meta.url), { workerData: { seconds: Number(seconds) } })
    for (let task = tasks.shift(); task !== undefined; task = tasks.shift()) {
      worker.postMessage(task)
      results.push(
        await new Promise((resolve, reject) => worker.once('message', resolve).once('error', reject)),
      )
      worker.removeAllListeners('error')
    }
    await worker.terminate()
  }
  await Promise.all(Array.from({ length: availableParallelism() }, work))
  const rowsOf = (set) => results.filter((row) => row.set === set && row.ours !== undefined)
  for (const set of sets) report(set, rowsOf(set))
  const classes = results.filter(({ set }) => CLASSES.includes(set))
  if (classes.length > 0) report('all classes', classes)
}

if (isMainThread) await main()
else {
  const { layout } = await import('../dist/core/shop/layout/layout.js')
  const { workOf } = await import('../dist/core/shop/effort.js')
  const effort = workOf(workerData.seconds)
  const lay = (given, stock, kerfMm = 0) => layout(given, stock, kerfMm, effort)
  parentPort.on('message', ({ set, instance }) => {
    const from = performance.now()
    const measured = MEASURES[set](instance, lay)
    parentPort.postMessage({ set, id: instance.id, ...measured, ms: performance.now() - from })
  })
}
