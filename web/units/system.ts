import { keptChoice } from '../data/kept.ts'
import type { System } from './quantities.ts'

const kept = keptChoice<System>('cyclewright/units', ['metric', 'inchPound'])

/** The units in which this browser shows and reads; every tab follows a switch. */
export const useUnits = (): System => kept.use()

/** The same outside of a component: for sentences. The whole screen is drawn anew when it changes. */
export const unitsShown = (): System => kept.now()

/** Switches the units, and keeps the choice in this browser. No document changes. */
export const chooseUnits = (next: System): void => kept.choose(next)
