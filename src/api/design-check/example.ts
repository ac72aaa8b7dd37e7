import type { Design } from '../../schema/design.ts'

/** The worked example of the contract: the repair café's shelf pair. */
export const shelfPair: Design = {
  name: 'shelf pair for the repair café',
  boxes: 2,
  drivers: [
    {
      id: 'main',
      count: 2,
      parameters: {
        fsHz: 124,
        qms: 3.2,
        qes: 0.55,
        vasL: 0.92,
        sdCm2: 28,
        reOhm: 3.4,
        leMh: 0.06,
        xmaxMm: 2.2,
        ratedPowerW: 12,
        ratedImpedanceOhm: 4,
      },
      frame: {
        outerDiameterMm: 76,
        cutoutDiameterMm: 66,
        boltCircleDiameterMm: 71,
        boltCount: 4,
        depthMm: 38,
        flangeThicknessMm: 3,
        displacementL: 0.05,
      },
    },
  ],
  wiring: {
    series: ['main', 'main'],
  },
  box: {
    kind: 'vented',
    outer: {
      widthMm: 120,
      heightMm: 240,
      depthMm: 160,
    },
    panelThicknessMm: 12,
    joint: 'butt',
    lining: 'walls',
    leakageQ: 10,
  },
  port: {
    count: 1,
    shape: 'round',
    innerDiameterMm: 26,
    outerDiameterMm: 32,
    tuningHz: 105,
  },
  amplifier: {
    channels: 2,
    output: 'bridge',
    supplyVoltageV: 12,
    minimumLoadOhm: 4,
    ratedPowerW: 10,
    gainDb: 26,
    inputResistanceKohm: 20,
    quiescentCurrentMa: 25,
    efficiency: 0.88,
  },
  supply: {
    kind: 'adapter',
    voltageV: 12,
    currentLimitA: 2,
    cable: {
      lengthM: 1.2,
      gaugeAwg: 22,
    },
    reservoirUf: 1000,
    sharedWithSource: false,
    indicator: {
      colour: 'green',
      currentMa: 3,
    },
  },
  signal: {
    sourceLevelV: 0.5,
    volumeControl: {
      resistanceKohm: 50,
      taper: 'audio',
    },
    inputCapacitorUf: 0.47,
  },
  programme: 'music',
  stock: [
    {
      id: 'ply offcut',
      lengthMm: 1220,
      widthMm: 400,
      thicknessMm: 12,
      count: 1,
      grain: 'length',
      trimMm: 5,
    },
  ],
  workshop: {
    kerfMm: 2.4,
    holeSawsMm: [22, 25, 29, 32, 35, 40, 51, 57, 64, 68, 76],
    screws: {
      panel: {
        diameterMm: 3,
        lengthMm: 30,
        countersunk: true,
      },
      driver: {
        diameterMm: 3,
        lengthMm: 10,
      },
    },
    edging: {
      widthMm: 22,
      slitsInto: 1,
      overhangMm: 10,
      edges: 'front',
    },
  },
  wants: {
    lowestHz: 105,
    loudnessDb: 88,
    listeningDistanceM: 1.5,
  },
}
