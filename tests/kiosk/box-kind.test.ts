import { describe, expect, it } from 'vitest'
import { boxOfKind } from '../../src/kiosk/browser/box-kind.ts'

const vented = { box: { kind: 'vented' }, port: { innerDiameterMm: 26, tuningHz: 105 } }

describe('another kind of box', () => {
  const closed = boxOfKind(vented, 'closed', [])

  it('has nothing of the kind before', () => {
    expect(closed).toEqual({ box: { kind: 'closed' } })
  })

  it('brings back what was typed for it before', () => {
    expect(boxOfKind(closed, 'vented', [vented])).toEqual(vented)
    const passive = { box: { kind: 'passive-radiator' }, passiveRadiator: { fsHz: 40 } }
    expect(boxOfKind(boxOfKind(passive, 'vented', []), 'passive-radiator', [vented, passive])).toEqual(
      passive,
    )
  })

  it('begins with a tube that can be answered, and asks for the data of a passive cone', () => {
    expect(boxOfKind(closed, 'vented', [])).toMatchObject({ port: { tuningHz: expect.any(Number) } })
    expect(boxOfKind(closed, 'passive-radiator', [])).toMatchObject({ passiveRadiator: {} })
  })

  it('keeps what stands there when the kind stays', () => {
    expect(boxOfKind(vented, 'vented', [])).toEqual(vented)
  })
})
