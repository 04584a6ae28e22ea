import { useCallback, useEffect, useRef, useState } from 'react'
import type { Game, Point } from '../../../../src/model/documents/types.ts'
import type { Place } from '../../../data/difference.ts'
import { valueAt } from '../../../data/place.ts'
import { type Edit, useEdit } from '../../../shell/fields/EditContext.tsx'
import { noteEdit } from '../../../worker/latency.ts'
import type { HandleActions } from './Handle.tsx'
import { type Snapped, type SnapTargets, snapped, targetsOf } from './snap.ts'
import { moved, type Thing } from './things.ts'

export interface MoveRules {
  /** Both halves of the field are kept alike. */
  alike: boolean
  /** Steps (m); 0 for none. */
  grid: number
  /** Draw to walls, obstacles and other points. */
  level: boolean
  /** How far the robot's centre keeps from obstacles (m). */
  away: number
  /** Metres of one pixel on the screen. */
  metresPerPixel(): number
}

interface Drag {
  thing: Thing
  /** The game as the drag began, and as it is now. */
  base: Game
  game: Game
  guides: Snapped['guides']
  targets: SnapTargets | null
}

/** Pixels within which a thing is drawn to another. */
const pull = 8
/** Steps of the arrow keys this near each other (ms) are one step of undo. */
const burst = 900

/** What a key adds where there are no steps to keep to (m). */
const keyStep = 0.05

/** Keeps what a move changed: one place of the document, so that undoing it is one step. */
function keep(edit: Edit, thing: Thing, game: Game, group: string | null): void {
  if (thing.kind === 'obstacle' || thing.kind === 'corner') {
    edit.set(['field', 'obstacles'], game.field.obstacles, group)
    return
  }
  const place: Place = [...thing.path, 'at']
  // What was typed there and could not be read is answered by where it lies now.
  for (const axis of [0, 1]) edit.setText([...place, axis], null, null)
  edit.set(place, valueAt(game, place), group)
}

/**
 * Moving things over the field. While a drag lasts only the drawing follows, so that no form is drawn anew in each
 * frame; the document gets the drop, as one step.
 */
export function useMoves(game: Game, rules: MoveRules) {
  const edit = useEdit()
  const [drag, setDrag] = useState<Drag | null>(null)
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  const latest = useRef({ game, rules, edit, drag })
  useEffect(() => {
    latest.current = { game, rules, edit, drag }
  })
  useEffect(() => () => clearTimeout(timer.current), [])

  const dragBy = useCallback((thing: Thing, [dx, dy]: Point) => {
    const { game: now, rules: how, drag: begun } = latest.current
    const base = begun?.thing.key === thing.key ? begun : null
    const from = base ?? { thing, base: now, targets: how.level ? targetsOf(now, thing, how.away) : null }
    const wanted: Point = [from.thing.at[0] + dx, from.thing.at[1] + dy]
    const found = snapped(wanted, { grid: how.grid, targets: from.targets, within: pull * how.metresPerPixel() })
    const next = { ...from, game: moved(from.base, from.thing, found.at, how.alike), guides: found.guides }
    latest.current.drag = next
    setDrag(next)
  }, [])

  const drop = useCallback((thing: Thing) => {
    const { drag: begun, edit: form } = latest.current
    latest.current.drag = null
    setDrag(null)
    if (!begun || begun.game === begun.base) return
    noteEdit()
    keep(form, thing, begun.game, null)
  }, [])

  const cancel = useCallback(() => {
    latest.current.drag = null
    setDrag(null)
  }, [])

  const step = useCallback((thing: Thing, [x, y]: Point) => {
    const { game: now, rules: how, edit: form } = latest.current
    const size = how.grid || keyStep
    const next = moved(now, thing, [thing.at[0] + x * size, thing.at[1] + y * size], how.alike)
    noteEdit()
    keep(form, thing, next, `move ${thing.key}`)
    clearTimeout(timer.current)
    timer.current = setTimeout(() => latest.current.edit.pause(), burst)
  }, [])

  const actionsOf = (thing: Thing): Omit<HandleActions, 'onSelect' | 'onRemove'> => ({
    onDrag: (by) => dragBy(thing, by),
    onDrop: () => drop(thing),
    onCancel: cancel,
    onStep: (steps) => step(thing, steps),
    onStill: () => edit.pause(),
  })
  return {
    /** The game as it is drawn: with the drag that is under way. */
    shown: drag?.game ?? game,
    guides: drag?.guides ?? {},
    dragged: drag?.thing.key ?? null,
    actionsOf,
  }
}
