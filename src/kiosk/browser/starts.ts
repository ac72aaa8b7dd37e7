import type { Draft } from './draft.ts'

/** Where somebody with a few parts begins: a closed pair on an adapter, all of it to be changed. */
export const FRESH: Draft = {
  boxes: 2,
  drivers: [{ id: 'main', count: 1, parameters: {} }],
  box: {
    kind: 'closed',
    netVolumeL: 3,
    proportions: { width: 1, height: 1.6, depth: 1.25 },
    panelThicknessMm: 12,
    lining: 'walls',
  },
  amplifier: { channels: 2, supplyVoltageV: 12 },
  supply: { kind: 'adapter' },
  programme: 'music',
  stock: [{ lengthMm: 1200, widthMm: 400, thicknessMm: 12 }],
}
