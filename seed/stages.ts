import type { CollectTrip, Duration, FinishTrip, ScoreEntry } from '../src/model/documents/types.ts'

export const fixed = (seconds: number): Duration => ({ kind: 'fixed', seconds })
export const range = (low: number, likely: number, high: number): Duration => ({ kind: 'range', low, likely, high })
export const lognormal = (median: number, spread: number): Duration => ({ kind: 'lognormal', median, spread })

/** A buoy that is handed down a ramp: the intake is lowered on the way there. */
export const fromTheRamp = (lineUp: Duration, success: number): CollectTrip => ({
  stages: [
    { id: 'lower', name: 'Lower the intake', duration: range(0.6, 0.8, 1.4), after: [] },
    { id: 'line-up', name: 'Line up with the ramp', duration: lineUp, after: ['drive', 'lower'] },
    { id: 'draw-in', name: 'Draw the buoy in', duration: lognormal(0.9, 1.6), after: ['line-up'] },
    { id: 'seat', name: 'Seat it', duration: range(0.2, 0.3, 0.9), after: ['draw-in'] },
  ],
  success,
  retry: range(1.5, 3, 13),
})

/** A buoy adrift in the channel has to be chased. */
export const adrift = (chase: Duration, success: number): CollectTrip => ({
  stages: [
    { id: 'lower', name: 'Lower the intake', duration: range(0.6, 0.8, 1.4), after: [] },
    { id: 'chase', name: 'Chase a buoy adrift', duration: chase, after: ['drive', 'lower'] },
    { id: 'draw-in', name: 'Draw the buoy in', duration: lognormal(0.9, 1.6), after: ['chase'] },
    { id: 'seat', name: 'Seat it', duration: range(0.2, 0.3, 0.9), after: ['draw-in'] },
  ],
  success,
  retry: range(1.5, 3, 13),
})

/** The arm rises while the robot drives and hangs the buoy from the gantry's foot. */
export const hangOnGantry = (lineUp: Duration, success: number): ScoreEntry => ({
  stages: [
    { id: 'raise', name: 'Raise the arm', duration: lognormal(2.4, 1.2), after: [] },
    { id: 'line-up', name: 'Line up under the hook', duration: lineUp, after: ['drive'] },
    { id: 'hook-on', name: 'Hook the buoy on', duration: lognormal(1.2, 2), after: ['raise', 'line-up'] },
    { id: 'let-go', name: 'Let go', duration: fixed(0.2), after: ['hook-on'] },
  ],
  spots: ['gantry.foot'],
  success,
})

/** From the mark the buoy is thrown: the wheel spins up on the way. */
export const throwAtGantry = (aim: Duration, success: number): ScoreEntry => ({
  stages: [
    { id: 'spin-up', name: 'Spin the wheel up', duration: range(1.5, 2.1, 3.4), after: [] },
    { id: 'settle', name: 'Come to rest', duration: range(0.1, 0.3, 1), after: ['drive'] },
    { id: 'aim', name: 'Aim', duration: aim, after: ['settle'] },
    { id: 'throw', name: 'Throw', duration: fixed(0.4), after: ['spin-up', 'aim'] },
  ],
  spots: ['gantry.mark'],
  success,
})

/** Low and forgiving: lower the arm on the way, set the buoys down one by one. */
export const setOnPier = (setDown: Duration, success: number): ScoreEntry => ({
  stages: [
    { id: 'lower', name: 'Lower the arm', duration: fixed(0.7), after: [] },
    { id: 'nudge', name: 'Nudge up to the pier', duration: lognormal(1.2, 2.3), after: ['drive'] },
    { id: 'set-down', name: 'Set a buoy down', duration: setDown, after: ['lower', 'nudge'], each: true },
  ],
  spots: 'any',
  success,
})

export const setOnLightship = (reach: Duration, success: number): ScoreEntry => ({
  stages: [
    { id: 'raise', name: 'Raise the arm', duration: lognormal(1.6, 1.2), after: [] },
    { id: 'reach', name: 'Reach over the rail', duration: reach, after: ['drive', 'raise'] },
    { id: 'set-down', name: 'Set a buoy down', duration: lognormal(0.6, 1.4), after: ['reach'], each: true },
  ],
  spots: 'any',
  success,
})

export const dryDock: FinishTrip = {
  stages: [{ id: 'settle', name: 'Settle between the walls', duration: range(0.4, 0.8, 1.8), after: ['drive'] }],
  success: 0.98,
  otherwise: null,
}
