// biome-ignore lint/suspicious/noExplicitAny: JSON documents that are bent on purpose, not all of them into something valid
type Loose = any
/** One thing made worse, or left out, by numbers and choices of a seeded source. */
export type Bend = (request: Loose, draw: Draw) => void

export interface Draw {
  /** A number spread evenly over the octaves between two. */
  from: (low: number, high: number) => number
  one: <T>(of: readonly T[]) => T
}

const round = (value: number): number => Number(value.toPrecision(3))

/** Draws from a source of numbers in [0, 1). */
export const drawOf = (random: () => number): Draw => ({
  from: (low, high) => round(low * (high / low) ** random()),
  one: (of) => of[Math.floor(random() * of.length)] as never,
})

const untuned = ({ port }: Loose) => {
  if (port !== undefined) for (const name of ['tuningHz', 'lengthMm']) delete port[name]
}

export const PORT_BENDS: Bend[] = [
  (port, { from }) => {
    untuned({ port })
    port.tuningHz = from(15, 400)
  },
  (port, { from }) => {
    untuned({ port })
    port.lengthMm = from(1, 600)
  },
  (port, { from }) => {
    const bore = from(6, 80)
    Object.assign(port, { innerDiameterMm: bore, outerDiameterMm: bore + 4 })
  },
  (port, { one, from }) => {
    port.elbows = { count: one([1, 2]), radiusMm: from(10, 80) }
  },
]

export const BOX_BENDS: Bend[] = [
  ...PORT_BENDS.map(
    (bend): Bend =>
      (request, draw) => {
        if (request.port !== undefined) bend(request.port, draw)
      },
  ),
  ({ box }, { one }) => {
    box.lining = one(['none', 'walls', 'filled'])
  },
  (request, { from }) => {
    delete request.box.outer
    request.box.netVolumeL = from(0.3, 12)
  },
  (request, { from, one }) => {
    delete request.port
    request.box.kind = 'passive-radiator'
    request.passiveRadiator = {
      fsHz: from(20, 90),
      qms: 6,
      vasL: from(1, 10),
      sdCm2: 50,
      ...one([{}, { xmaxMm: from(1, 8) }]),
    }
  },
  ({ box }, { one }) => Object.assign(box, one([{ portQ: 40 }, { portQ: null }, { absorptionQ: 20 }])),
]

export const DRIVER_BENDS: Bend[] = [
  (parameters, { from }) => {
    parameters.qes = from(0.3, 3)
  },
  (parameters, { from }) => {
    parameters.fsHz = from(40, 250)
  },
  (parameters, { from }) => {
    parameters.xmaxMm = from(0.2, 3)
  },
  (parameters, { from }) => {
    parameters.qts = from(0.2, 0.9)
  },
  (parameters, { from }) => {
    parameters.ratedPowerW = from(0.2, 12)
  },
  (parameters, { one }) => {
    parameters.ratedImpedanceOhm = one([2, 4, 8, 16])
  },
  (parameters) => {
    delete parameters.xmaxMm
  },
]

export const POWER_BENDS: Bend[] = [
  ({ supply }, { from }) => {
    supply.voltageV = from(3, 30)
  },
  ({ supply }, { from }) => {
    supply.currentLimitA = from(0.02, 6)
  },
  (request, { one, from }) => {
    const port = one(['usb2', 'usb3', 'charging-port', 'type-c-default', 'type-c-3a', 'power-delivery'])
    request.supply = {
      ...request.supply,
      kind: one(['charger', 'power-bank', 'computer-port']),
      port,
      voltageV: port === 'power-delivery' ? one([5, 9, 12, 15]) : 5,
      currentLimitA: from(0.2, 5),
    }
    request.amplifier.supplyVoltageV = request.supply.voltageV
  },
  (request, { one }) => {
    delete request.supply.port
    request.supply.kind = one(['charger', 'power-bank', 'adapter'])
  },
  (request, { one }) => {
    delete request.supply.port
    delete request.supply.voltageV
    Object.assign(request.supply, { kind: 'cells', cellsInSeries: one([1, 2, 3, 4, 6]) })
  },
  (request, { from, one }) => {
    request.supply.cable = { lengthM: from(0.5, 20), ...one([{ gaugeAwg: 28 }, { areaMm2: 0.1 }, {}]) }
  },
  ({ supply }, { from, one }) => {
    supply.reservoirUf = from(20, 10_000)
    supply.reservoirRatingV = one([6.3, 10, 16, 25])
  },
  ({ supply }, { one }) => {
    supply.switchRatedA = one([0.1, 0.5, 1, 2])
  },
  ({ supply }) => {
    supply.sharedWithSource = true
  },
  ({ supply }, { from, one }) => {
    supply.indicator = one([
      { colour: 'blue', currentMa: from(1, 40) },
      { forwardV: from(2, 9), currentMa: 5 },
    ])
  },
  ({ amplifier }, { from }) => {
    amplifier.minimumSupplyV = from(3, 14)
  },
  ({ amplifier }, { from }) => {
    amplifier.maximumSupplyV = from(5, 26)
  },
  ({ amplifier }, { from }) => {
    const minimumSupplyV = from(5, 12)
    Object.assign(amplifier, { minimumSupplyV, maximumSupplyV: 2 * minimumSupplyV })
  },
  ({ amplifier }, { from }) => {
    amplifier.ratedPowerW = from(5, 200)
  },
  ({ amplifier }, { one }) => {
    amplifier.minimumLoadOhm = one([2, 4, 6, 8])
  },
  ({ amplifier }, { from }) => {
    amplifier.gainDb = from(6, 50)
  },
  ({ amplifier }, { one }) => {
    amplifier.output = one(['bridge', 'single-ended'])
  },
  (request, { from }) => {
    request.signal = { ...request.signal, sourceLevelV: from(0.02, 4) }
  },
  (request, { from }) => {
    request.signal = { ...request.signal, inputCapacitorUf: from(0.02, 2) }
  },
  (request, { one }) => {
    request.signal = { ...request.signal, volumeControl: { resistanceKohm: one([10, 50, 100, 500]) } }
  },
  (request, { from }) => {
    request.wants = { ...request.wants, loudnessDb: from(70, 115) }
  },
  (request, { from }) => {
    request.wants = { ...request.wants, lowestHz: from(20, 200) }
  },
]

export const WIRING_BENDS: Bend[] = [
  (request, { one }) => {
    const { id } = request.drivers[0]
    const count = one([1, 2, 3, 4])
    request.drivers[0].count = count * one([1, 2])
    const all = Array.from({ length: count }, () => id)
    request.wiring = one([{ parallel: all }, { series: all }])
  },
]
