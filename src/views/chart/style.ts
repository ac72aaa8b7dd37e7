/** Looks of curves, told apart by dash as well as by tone, so that a copier keeps them apart. */
export type Look = 'first' | 'second' | 'third'

const tones = (
  tone: Record<'ink' | 'paper' | 'quiet' | 'grid' | 'fine' | 'second' | 'third' | 'limit', string>,
) => `
.chart .paper { fill: ${tone.paper}; }
.chart text { fill: ${tone.ink}; }
.chart .quiet { fill: ${tone.quiet}; }
.chart .label { stroke: ${tone.paper}; }
.chart .grid { stroke: ${tone.grid}; }
.chart .fine { stroke: ${tone.fine}; }
.chart .frame { stroke: ${tone.quiet}; }
.chart .mark { stroke: ${tone.quiet}; }
.chart .first { stroke: ${tone.ink}; }
.chart .second { stroke: ${tone.second}; }
.chart .third { stroke: ${tone.third}; }
.chart .limit { stroke: ${tone.limit}; }
.chart text.limit { fill: ${tone.limit}; stroke: ${tone.paper}; }
.chart .spot { fill: ${tone.ink}; stroke: ${tone.paper}; }
.chart .flow { fill: ${tone.grid}; stroke: ${tone.ink}; }
.chart .lost { fill: ${tone.third}; stroke: ${tone.ink}; }
`

const ON_WHITE = tones({
  ink: '#1a1a1a',
  paper: '#ffffff',
  quiet: '#595959',
  grid: '#d4d4d4',
  fine: '#ececec',
  second: '#1f5fa8',
  third: '#6b6b6b',
  limit: '#b3261e',
})

const ON_DARK = tones({
  ink: '#eceff1',
  paper: '#15181b',
  quiet: '#a3abb2',
  grid: '#3a4148',
  fine: '#262b30',
  second: '#8ab8f5',
  third: '#a3abb2',
  limit: '#ff9c8f',
})

/** The style of every picture; plain rules without variables, which not every drawing program reads. */
export const STYLE = `
.chart text { font-size: 12px; }
.chart .title { font-size: 15px; font-weight: bold; }
.chart .strong { font-weight: bold; }
.chart .label { paint-order: stroke; stroke-width: 4px; stroke-linejoin: round; }
.chart path, .chart line { fill: none; stroke-width: 1px; }
.chart .frame { fill: none; stroke-width: 1px; }
.chart path.curve { stroke-width: 2.2px; stroke-linecap: round; stroke-linejoin: round; }
.chart path.second { stroke-dasharray: 8 5; }
.chart path.third { stroke-width: 1.6px; stroke-dasharray: 1 5; }
.chart line.limit { stroke-width: 1.6px; stroke-dasharray: 12 4 2 4; }
.chart .mark { stroke-dasharray: 3 3; }
.chart .spot { stroke-width: 1.5px; }
${ON_WHITE}
@media screen and (prefers-color-scheme: dark) {${ON_DARK}}
`
