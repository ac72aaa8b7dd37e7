import { describe, expect, it } from 'vitest'
import type { Draft } from '../../src/kiosk/browser/draft.ts'
import {
  beforeTyping,
  newHistory,
  pastOf,
  redone,
  settled,
  stepped,
  undone,
} from '../../src/kiosk/browser/history.ts'

const begin = (design: Draft) => newHistory({ design, work: 'first' })

describe('undo', () => {
  it('goes back field by field, however many letters were typed', () => {
    let history = begin({ name: '' })
    for (const name of ['s', 'sh', 'she', 'shelf']) history = stepped(history, { name }, '/name')
    history = stepped(history, { name: 'shelf', boxes: 2 }, '/boxes')
    expect(undone(history).design).toEqual({ name: 'shelf' })
    expect(undone(undone(history)).design).toEqual({ name: '' })
    expect(undone(undone(undone(history))).design).toEqual({ name: '' })
  })

  it('goes back to what a field held when it was left', () => {
    const left = settled(stepped(begin({ name: '' }), { name: 'shelf' }, '/name'))
    const history = stepped(left, { name: 'desk' }, '/name')
    expect(undone(history).design).toEqual({ name: 'shelf' })
  })

  it('takes each touch of a button as a step of its own, and forgets the oldest after a hundred', () => {
    let history = begin({ boxes: 0 })
    for (let boxes = 1; boxes <= 150; boxes += 1) history = stepped(history, { boxes })
    expect(history.past.length).toBe(100)
    expect(undone(history).design).toEqual({ boxes: 149 })
  })

  it('is taken back by redo until something else is done', () => {
    const history = stepped(stepped(begin({ boxes: 0 }), { boxes: 1 }), { boxes: 2 })
    const back = undone(undone(history))
    expect(redone(back).design).toEqual({ boxes: 1 })
    expect(redone(redone(redone(back))).design).toEqual({ boxes: 2 })
    expect(undone(redone(redone(back))).design).toEqual({ boxes: 1 })
    expect(redone(stepped(back, { boxes: 7 })).design).toEqual({ boxes: 7 })
  })

  it('crosses over to the design that was there before, which is no past of the one that is', () => {
    const opened = stepped(begin({ boxes: 1 }), { boxes: 2 }, '', 'second')
    expect(pastOf(opened)).toEqual([])
    expect(undone(opened)).toMatchObject({ design: { boxes: 1 }, work: 'first' })
    expect(pastOf(stepped(opened, { boxes: 3 }))).toEqual([{ boxes: 2 }])
  })
})

it('what was there before a field was begun is known while it is typed in', () => {
  const history = stepped(stepped(begin({ name: '' }), { name: 'a' }, '/name'), { name: 'ab' }, '/name')
  expect(beforeTyping(history, '/name')).toEqual({ name: '' })
  expect(beforeTyping(history, '/boxes')).toEqual({ name: 'ab' })
})
