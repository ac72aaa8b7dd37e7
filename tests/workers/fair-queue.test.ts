import { describe, expect, it } from 'vitest'
import { fairQueue } from '../../src/workers/fair-queue.ts'

const all = (queue: ReturnType<typeof fairQueue<string>>): string[] => {
  const item = queue.next()
  return item === undefined ? [] : [item, ...all(queue)]
}

describe('a fair queue', () => {
  it('serves clients in turn, each in its own order', () => {
    const queue = fairQueue<string>()
    for (const item of ['a1', 'a2', 'a3', 'b1', 'c1', 'b2']) queue.add(item.charAt(0), item)
    expect(queue.waiting()).toBe(6)
    expect(all(queue)).toEqual(['a1', 'b1', 'c1', 'a2', 'b2', 'a3'])
    expect(queue.waiting()).toBe(0)
  })

  it('forgets what is dropped', () => {
    const queue = fairQueue<string>()
    for (const item of ['a1', 'a2', 'b1']) queue.add(item.charAt(0), item)
    queue.drop('a', 'a1')
    queue.drop('b', 'b1')
    queue.drop('nobody', 'x')
    expect([queue.waiting('a'), queue.waiting('b')]).toEqual([1, 0])
    expect(all(queue)).toEqual(['a2'])
  })
})
