import { ampere, mm, ohm, volt } from '../../core/say.ts'
import type { DesignCheckSections } from '../../schema/design-check.ts'

/** A step of the work, in order, with what can hurt at it. */
export interface Step {
  title: string
  tasks: string[]
  cautions: string[]
}

interface StepKind {
  title: string
  tasks: (answer: DesignCheckSections) => string[]
  /** Cautions that belong here, told by their words; each stands at the first step that knows it. */
  warns: RegExp
}

const counted = (count: number, one: string): string => `${count} ${one}${count === 1 ? '' : 's'}`

const KINDS: readonly StepKind[] = [
  {
    title: 'Cut the panels',
    tasks: ({ cuts, sheets, panels }) => [
      ...(cuts.length === 0
        ? ['Find boards first: none of those on hand takes the parts.']
        : [
            `${counted(cuts.length, 'cut')} on ${counted(sheets.length, 'board')}, in the order of the cutting diagram; mark every piece at once.`,
          ]),
      ...panels
        .filter(({ bandedEdges }) => bandedEdges.length > 0)
        .map(({ id, bandedEdges }) => `Band the ${id}: ${bandedEdges.join(', ')}.`),
    ],
    warns: /^Sawing|^A strip|^Dust|^Knife/,
  },
  {
    title: 'Drill and saw the holes',
    tasks: ({ panels }) =>
      panels
        .filter(({ holes }) => holes.length > 0)
        .map(
          ({ id, holes }) =>
            `${id}: ${counted(holes.length, 'hole')}, by the template or the table of holes.`,
        ),
    warns: /^Hole saws/,
  },
  {
    title: 'Fit dry, then glue',
    tasks: () => [
      'Put the box together without glue: drivers, port and board must go in and out.',
      'Glue all but the panel that stays open, clamp, wipe off what comes out, let it harden for a day.',
    ],
    warns: /glue|^Magnets/i,
  },
  {
    title: 'Seal and line',
    tasks: ({ port }) => [
      'Seal every joint from inside, and around leads and fittings.',
      ...(port?.lengthMm === undefined || port.lengthMm === null
        ? []
        : [`Cut the tube to ${mm(port.lengthMm)}, sand its ends, seal it into its hole.`]),
      'Put the lining where the plan has it, clear of the port and of warm parts.',
    ],
    warns: /sealant/i,
  },
  {
    title: 'Wire',
    tasks: ({ load }) => [
      'Wire the drivers as in the wiring diagram, plus to the red lead; mark the leads.',
      load.meterOhm === null
        ? 'A meter reads open across the terminals: capacitors stand in every path.'
        : `Read the terminals of each channel with a meter before the amplifier is connected: ${ohm(load.meterOhm)}.`,
    ],
    warns:
      /^Soldering|^Bridge|^Lithium|^Mains|^Power bank|single-ended|electrolytic|resistor burns|resistor on|resistor loaded/i,
  },
  {
    title: 'First power',
    tasks: ({ supply }) => [
      `Measure the source by itself: ${volt(supply.voltageV)}, plus where plus belongs.`,
      `Switch on through a current limit, volume down. Without a signal it takes about ${ampere(supply.idleA)}.`,
      'Listen for hum, then raise the volume slowly.',
    ],
    warns: /^First power|reservoir|overvoltage|load below/i,
  },
  {
    title: 'Measure what was built',
    tasks: () => ['Take the readings of the table of what a meter should show; note them on this sheet.'],
    warns: /^Hearing|test tone/i,
  },
]

/** The steps in working order; a caution that no step knows stands at the last. */
export function stepsOf(answer: DesignCheckSections, cautions: readonly string[]): Step[] {
  const stepFor = (caution: string) => {
    const known = KINDS.findIndex(({ warns }) => warns.test(caution))
    return known < 0 ? KINDS.length - 1 : known
  }
  return KINDS.map(({ title, tasks }, index) => ({
    title,
    tasks: tasks(answer),
    cautions: cautions.filter((caution) => stepFor(caution) === index),
  }))
}
