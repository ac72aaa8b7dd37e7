import { safeHoursADay } from '../../../src/core/power/loudness.ts'
import { fuseA } from '../../../src/core/power/protection.ts'
import { inrush } from '../../../src/core/power/reservoir.ts'
import { holdRows } from './hold-rows.ts'

holdRows('protection', {
  'fuse-': ({ steadyCurrentA }) => ({ fuseA: fuseA(steadyCurrentA) }),
  'switch-inrush': ({ reservoirUf, loopResistanceOhm, voltageV, switchRatedA }) => {
    const { peakCurrentA } = inrush(reservoirUf, loopResistanceOhm, voltageV)
    return { peakCurrentA, timesRating: peakCurrentA / switchRatedA }
  },
})

holdRows('caution', {
  'noise-': ({ levelDba }) => ({ hoursADay: safeHoursADay(levelDba) }),
})
