import { useEffect, useRef, useState } from 'react'
import type { Duration, Robot } from '../../../src/model/documents/types.ts'
import { mean } from '../../../src/model/duration/index.ts'
import type { StripHandlers } from '../../charts/CycleStrip.tsx'
import type { StripBar } from '../../charts/stripLayout.ts'
import type { Place } from '../../data/difference.ts'
import { withValueAt } from '../../data/place.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { noteEdit } from '../../worker/latency.ts'
import { type ShownLeg, tripOf } from './cycle.ts'
import { canMove, withMean } from './durations.ts'

/** The Duration behind a bar, where it stands in the robot, and how often the bar holds it. */
export interface BarTime {
  duration: Duration
  place: Place
  times: number
}

export function barTime(robot: Robot, legs: readonly ShownLeg[], bar: StripBar): BarTime | null {
  const leg = legs.find(({ id }) => id === bar.leg)
  const trip = leg && tripOf(robot, leg)
  if (!leg || !trip || bar.stage === 'drive') return null
  if ('whole' in trip) return { duration: trip.whole, place: [...leg.trip, 'whole'], times: 1 }
  const index = trip.stages.findIndex(({ id }) => id === bar.stage)
  const stage = trip.stages[index]
  if (!stage) return null
  return {
    duration: stage.duration,
    place: [...leg.trip, 'stages', index, 'duration'],
    times: stage.each ? leg.load : 1,
  }
}

interface Drag extends BarTime {
  /** As the drag began, and as the bar is drawn now. */
  start: Duration
  /** Where the strip ended as the drag began (s). */
  until: number
}

/** Steps of the arrow keys this near each other (ms) are one step of undo. */
const burst = 900
/** While a bar is dragged, the points are asked for at most this often (ms), so that the drawing keeps its frames. */
const between = 150

/**
 * Changing times on the strip. While a drag lasts only the drawing follows, and the points with what `onPreview` gets; the
 * document gets the drop, as one step of undo.
 */
export function useStripEdits(of: {
  robot: Robot
  legs: readonly ShownLeg[]
  end: number
  onPreview(robot: Robot | null): void
}) {
  const edit = useEdit()
  const [drag, setDrag] = useState<Drag | null>(null)
  const latest = useRef({ ...of, edit, drag })
  const shownAt = useRef(0)
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  useEffect(() => {
    latest.current = { ...of, edit, drag }
  })
  useEffect(() => () => clearTimeout(timer.current), [])

  const put = (next: Drag | null) => {
    latest.current.drag = next
    setDrag(next)
  }
  const drawn = (next: Drag) => withValueAt(latest.current.robot, next.place, next.duration)
  const onDrag: StripHandlers['onDrag'] = (bar, by) => {
    const { robot, legs, end, drag: begun, onPreview } = latest.current
    const found = barTime(robot, legs, bar)
    if (!found || !canMove(found.duration)) return
    const from = begun ?? { ...found, start: found.duration, until: end }
    const wanted = Math.max(0, Math.round((mean(from.start) * from.times + by) * 10) / 10)
    const next = { ...from, duration: withMean(from.start, wanted / from.times) }
    put(next)
    const now = performance.now()
    if (now - shownAt.current < between) return
    shownAt.current = now
    onPreview(drawn(next))
  }
  const onCancel = () => {
    put(null)
    latest.current.onPreview(null)
  }
  const onDrop = () => {
    const { drag: begun } = latest.current
    onCancel()
    if (!begun || begun.duration === begun.start) return
    noteEdit()
    latest.current.edit.set(['robot', ...begun.place], begun.duration)
  }
  const onStill = () => {
    clearTimeout(timer.current)
    latest.current.edit.pause()
  }
  const onStep: StripHandlers['onStep'] = (bar, step) => {
    const { robot, legs, edit: form } = latest.current
    const found = barTime(robot, legs, bar)
    if (!found || !canMove(found.duration) || form.readOnly) return
    const wanted = Math.max(0, Math.round((mean(found.duration) * found.times + step) * 10) / 10)
    noteEdit()
    form.set(['robot', ...found.place], withMean(found.duration, wanted / found.times), `bar/${bar.leg}/${bar.stage}`)
    clearTimeout(timer.current)
    timer.current = setTimeout(onStill, burst)
  }
  return {
    /** The robot as it is drawn: with the drag that is under way. */
    shown: drag ? drawn(drag) : of.robot,
    until: drag?.until,
    handlers: { onDrag: edit.readOnly ? undefined : onDrag, onDrop, onCancel, onStep, onStill },
  }
}
