import { describe, expect, it } from 'vitest'
import { shelfPair } from '../../src/api/design-check/example.ts'
import { Refused } from '../../src/api/problem.ts'
import { remembered } from '../../src/api/recent-answers.ts'
import { buildApp } from '../held-app.ts'

/** A calculation that ends when it is told to, and notes for whom it was begun. */
function slow() {
  const asked: string[] = []
  let end = { finish: () => {}, fail: (_: Error) => {} }
  const same = remembered((body: string, who: string) => {
    asked.push(who)
    return new Promise<string>((resolve, reject) => {
      end = { finish: () => resolve(body), fail: reject }
    })
  })
  return { same, asked, finish: () => end.finish(), fail: (error: Error) => end.fail(error) }
}

async function until(isSo: () => boolean): Promise<void> {
  for (let tries = 0; !isSo() && tries < 100; tries += 1) await new Promise(setImmediate)
}

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

  it('are waited for by all who ask while they are under way', async () => {
    const { same, asked, finish } = slow()
    const all = [same('x', 'one'), same('x', 'two'), same('x', 'three')]
    expect(asked).toEqual(['one'])
    finish()
    expect(await Promise.all(all)).toEqual(['x', 'x', 'x'])
    expect(asked).toEqual(['one'])
  })

  it('are begun anew, once, for those who waited when the first has gone away', async () => {
    const { same, asked, finish, fail } = slow()
    const [first, ...others] = [same('x', 'one'), same('x', 'two'), same('x', 'three')]
    fail(new Error('went away'))
    await expect(first).rejects.toThrow('went away')
    await until(() => asked.length > 1)
    finish()
    expect(await Promise.all(others)).toEqual(['x', 'x'])
    expect(asked).toEqual(['one', 'two'])
  })

  it('that are refused are refused to all who waited, and asked anew later', async () => {
    const { same, asked, finish, fail } = slow()
    const all = [same('x', 'one'), same('x', 'two')].map((one) => one.catch((error: Error) => error.message))
    fail(new Refused('busy', 'too long'))
    expect(await Promise.all(all)).toEqual(['too long', 'too long'])
    const later = same('x', 'three')
    finish()
    expect(await later).toBe('x')
    expect(asked).toEqual(['one', 'three'])
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
