import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { designCheck } from '../../../src/core/design/design-check.ts'
import { loadInBox } from '../../../src/core/design/load-in-box.ts'
import { isRefusal } from '../../../src/core/outcome.ts'
import type { Design } from '../../../src/schema/design.ts'
import type { LoadImpedanceRequest } from '../../../src/schema/load-impedance.ts'
import { designWiringSvg } from '../../../src/views/wiring/design-circuit.ts'
import { loadWiringSvg } from '../../../src/views/wiring/load-circuit.ts'
import { type Element, named, readSvg } from '../drawing/read-svg.ts'

const designOf = (name: string): Design =>
  JSON.parse(readFileSync(new URL(`../../designs/${name}.json`, import.meta.url), 'utf8')) as Design

function drawn(design: Design): Element {
  const outcome = designCheck(design)
  if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
  const svg = designWiringSvg(outcome.sections, design)
  if (svg === null) throw new Error('nothing drawn')
  return readSvg(svg)
}

const wordsIn = (picture: Element): string[] => named(picture, 'text').map(({ text }) => text)
const count = (words: string[], word: string): number => words.filter((other) => other === word).length

const PAIR = designOf('shelf-pair')

describe('the wiring diagram', () => {
  it('has both channels with every driver, its polarity, and the parts with their values', () => {
    const words = wordsIn(drawn(PAIR))
    expect(count(words, 'main 1')).toBe(2)
    expect(count(words, 'main 2')).toBe(2)
    expect(count(words, '4 Ω')).toBe(4)
    for (const word of ['1 +', '1 −', '2 +', '2 −', 'Box 1', 'Box 2', 'in 1', 'in 2'])
      expect(words).toContain(word)
    for (const word of ['1000 µF', '50 kΩ', '0.47 µF', 'lead, 1.2 m, 22 AWG', '12 V'])
      expect(words).toContain(word)
    // Four drivers, two boxes, the source, the amplifier and the reservoir each say where plus is.
    expect(count(words, '+')).toBe(4 + 2 + 1 + 1 + 1)
  })

  it('has the crossover of a box with two kinds of driver', () => {
    const words = wordsIn(drawn(designOf('two-way-monitor')))
    for (const word of ['0.3 mH', '0.3 Ω of wire', '3.3 µF', 'woofer', 'tweeter'])
      expect(words).toContain(word)
    expect(words).not.toContain('in 2')
  })

  it('numbers the drivers of a box through both of its channels', () => {
    const words = wordsIn(drawn(designOf('one-box-stereo')))
    expect([count(words, 'main 1'), count(words, 'main 2'), count(words, 'Box')]).toEqual([1, 1, 1])
  })

  it('puts the capacitor that a single-ended output needs before each load', () => {
    const single = { ...PAIR, amplifier: { ...PAIR.amplifier, output: 'single-ended' } } satisfies Design
    const fitted = { ...single, amplifier: { ...single.amplifier, outputCapacitorFitted: true } }
    expect(count(wordsIn(drawn(single)), 'or more')).toBe(2)
    expect(count(wordsIn(drawn(fitted)), 'or more')).toBe(0)
  })

  it('says how the channels are wired that do not fit', () => {
    const wide: Design = {
      ...PAIR,
      drivers: [{ ...PAIR.drivers[0]!, count: 8 }],
      wiring: { parallel: Array.from({ length: 8 }, () => 'main') },
      box: { ...PAIR.box, outer: { widthMm: 300, heightMm: 600, depthMm: 200 } },
    }
    const words = wordsIn(drawn(wide))
    expect(words).toContain('Channel 2 is wired like channel 1.')
    expect(words).toContain('main 8')
  })

  it('says what it shows to those who do not see it', () => {
    const picture = drawn(PAIR)
    expect(picture.attributes['role']).toBe('img')
    const [desc] = named(picture, 'desc')
    expect(desc?.text).toContain('Each of the 2 channels, in 2 boxes, drives main and main in series')
    expect(desc?.text).toContain('reservoir of 1000 uF')
  })

  it('keeps its words apart', () => {
    for (const name of ['shelf-pair', 'two-way-monitor', 'one-box-stereo', 'closed-desk-box']) {
      // Narrower and lower than the face runs, so that what meets here truly overlaps.
      const boxes = named(drawn(designOf(name)), 'text').map(({ text, attributes }) => {
        const [x, y, size] = [attributes['x'], attributes['y'], attributes['font-size']].map(Number)
        const long = 0.5 * size! * text.length
        const before = { start: 0, middle: long / 2, end: long }[attributes['text-anchor'] ?? ''] ?? 0
        return { text, left: x! - before, right: x! - before + long, top: y! - 0.7 * size!, bottom: y! }
      })
      for (const [index, a] of boxes.entries())
        for (const b of boxes.slice(index + 1))
          expect(
            a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom,
            `${name}: ${a.text}, ${b.text}`,
          ).toBe(false)
    }
  })
})

it('a load by itself is drawn on an amplifier of which little is known', () => {
  const svg = loadWiringSvg(
    { crossover: [] },
    {
      drivers: [{ id: 'main', parameters: { ratedImpedanceOhm: 4 } }],
      wiring: { parallel: ['main', 'main'] },
    },
  )
  const words = wordsIn(readSvg(svg ?? ''))
  expect(words).toEqual(expect.arrayContaining(['main 1', 'main 2', '1 +', '1 −']))
  expect(words).not.toContain('fuse')
})

describe('a load of which only the crossover is wished', () => {
  const request: LoadImpedanceRequest = {
    drivers: [
      { id: 'bass', parameters: { reOhm: 6 } },
      { id: 'treble', parameters: { reOhm: 4 }, sharesBox: false },
    ],
    crossover: { cornerHz: 2500 },
  }
  const drawnOf = (asked: LoadImpedanceRequest) => {
    const outcome = loadInBox(asked)
    if (isRefusal(outcome)) throw new Error(JSON.stringify(outcome.faults))
    return wordsIn(readSvg(loadWiringSvg(outcome.sections, asked) ?? ''))
  }

  it('is drawn through that crossover: L = R/(2 pi f) before the bass, C = 1/(2 pi f R) of E12 before the treble', () => {
    // 6 ohm and 4 ohm at 2500 Hz: 0.382 mH and 15.9 uF, of which 15 uF is the nearest of the row.
    const words = drawnOf(request)
    expect(words).toEqual(expect.arrayContaining(['bass', 'treble', '0.382 mH', '15 µF']))
    // Of an ideal coil there is no wire to tell of.
    expect(words.join()).not.toContain('of wire')
  })

  it('has both parts of second order and the pad', () => {
    const words = drawnOf({ ...request, crossover: { cornerHz: 2500, order: 2, attenuationDb: 6 } })
    expect(words.filter((word) => word.endsWith(' mH'))).toHaveLength(2)
    expect(words.filter((word) => word.endsWith(' µF'))).toHaveLength(2)
    // 6 dB off 4 ohm: R(1 - 1/k) = 2.0 ohm before, R/(k - 1) = 4.0 ohm across, k = 10^(6/20).
    expect(words).toEqual(expect.arrayContaining(['2 Ω', '4.02 Ω']))
  })

  it('is drawn as given where it is given', () => {
    const words = drawnOf({ ...request, wiring: { series: ['bass', 'treble'] } })
    expect(words.filter((word) => / (mH|µF)$/.test(word))).toEqual([])
  })
})
