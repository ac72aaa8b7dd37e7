import { isRefusal } from '../../../src/core/outcome.ts'
import { cutList } from '../../../src/core/shop/cut-list.ts'
import type { CutListRequest } from '../../../src/schema/cut-list.ts'

/** 120 x 240 x 160 mm of 12 mm board: 96 x 216 x 136 inside; two drivers of 66 mm in a column. */
export const box: NonNullable<CutListRequest['box']> = {
  kind: 'closed',
  outer: { widthMm: 120, heightMm: 240, depthMm: 160 },
  panelThicknessMm: 12,
}
export const frame = {
  outerDiameterMm: 76,
  cutoutDiameterMm: 66,
  depthMm: 50,
  magnetDiameterMm: 60,
  displacementL: 0.05,
}
export const request: CutListRequest = {
  box,
  drivers: [{ id: 'main', count: 2, parameters: {}, frame }],
  stock: [{ id: 'ply', lengthMm: 1220, widthMm: 400, thicknessMm: 12 }],
}

export function laid(change: Partial<CutListRequest>) {
  const result = cutList({ ...request, ...change }, { portLengthMm: null })
  if (isRefusal(result)) throw new Error(JSON.stringify(result.faults))
  return result
}
export const withBox = (change: Partial<typeof box>) => laid({ box: { ...box, ...change } })
export const faults = (change: Partial<typeof box>) => {
  const result = cutList({ ...request, box: { ...box, ...change } }, { portLengthMm: null })
  return isRefusal(result) ? result.faults : []
}
export const panel = (result: ReturnType<typeof laid>, id: string) =>
  result.sections.panels.find((candidate) => candidate.id === id)
export const codes = (result: ReturnType<typeof laid>) => result.findings.map(({ code }) => code)
