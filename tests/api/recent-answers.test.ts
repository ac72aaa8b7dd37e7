import { describe, expect, it } from 'vitest'
import { shelfPair } from '../../src/api/design-check/example.ts'
import { remembered } from '../../src/api/recent-answers.ts'
import { buildApp } from '../held-app.ts'

describe('recent answers', () => {
  it('are computed once for the same question, and anew for another', async () => {
    const asked: number[] = []
    const square = remembered(({ of }: { of: number }) => {
      asked.push(of)
      return of * of
    })
    expect(await square({ of: 3 })).toBe(9)
    expect(await square({ of: 3 })).toBe(9)
    expect(await square({ of: 4 })).toBe(16)
    expect(asked).toEqual([3, 4])
  })

  it('forget the one that was not used longest', async () => {
    const asked: number[] = []
    const same = remembered((of: number) => {
      asked.push(of)
      return of
    }, 2)
    for (const of of [1, 2, 1, 3, 1, 2]) await same(of)
    expect(asked).toEqual([1, 2, 3, 2])
  })

  it('do not keep what failed', async () => {
    let tries = 0
    const once = remembered((_: string) => {
      tries += 1
      if (tries === 1) throw new Error('given up')
      return 'done'
    })
    await expect(once('x')).rejects.toThrow('given up')
    expect(await once('x')).toBe('done')
  })

  it('are the same bytes as first ones', async () => {
    const app = await buildApp()
    const ask = () => app.inject({ method: 'POST', url: '/v1/design-check?working=true', payload: shelfPair })
    const first = await ask()
    await app.inject({ method: 'POST', url: '/v1/design-check?format=svg&picture=box', payload: shelfPair })
    expect((await ask()).body).toBe(first.body)
    await app.close()
  })
})
