import { describe, expect, it } from 'vitest'
import { newHistory, stepped, undone } from '../../src/kiosk/browser/history.ts'

describe('undo', () => {
  it('goes back field by field, however many letters were typed', () => {
    let history = newHistory({ name: '' })
    for (const name of ['s', 'sh', 'she', 'shelf']) history = stepped(history, { name }, '/name')
    history = stepped(history, { name: 'shelf', boxes: 2 }, '/boxes')
    expect(undone(history).now).toEqual({ name: 'shelf' })
    expect(undone(undone(history)).now).toEqual({ name: '' })
    expect(undone(undone(undone(history))).now).toEqual({ name: '' })
  })

  it('takes each touch of a button as a step of its own, and forgets the oldest after a hundred', () => {
    let history = newHistory({ boxes: 0 })
    for (let boxes = 1; boxes <= 150; boxes += 1) history = stepped(history, { boxes })
    expect(history.past.length).toBe(100)
    expect(undone(history).now).toEqual({ boxes: 149 })
  })
})
