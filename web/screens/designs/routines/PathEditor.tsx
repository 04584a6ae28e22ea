import { Button } from '@mantine/core'
import { useEffect, useRef, useState } from 'react'
import type { Point } from '../../../../src/model/documents/types.ts'
import { FieldMap } from '../../../charts/FieldMap.tsx'
import { Measured } from '../../../charts/Measured.tsx'
import { forgetTexts, problemAt, useEdit } from '../../../shell/fields/EditContext.tsx'
import { NumberField } from '../../../shell/fields/NumberField.tsx'
import { useUnits } from '../../../units/system.ts'
import { sayDistance } from '../../../units/write.ts'
import { words } from '../../../words/catalogue.ts'
import { seconds } from '../../../words/format.ts'
import { Coordinates } from './Coordinates.tsx'
import { PathMarks } from './PathMarks.tsx'
import { onField, type PathPoint, pathLength, withPoint } from './path.ts'
import type { RoutineProps } from './RoutineFields.tsx'

/** A routine's path: points added by a press on the field and dragged there, or typed exactly, each with its time. */
export function PathEditor(props: RoutineProps) {
  const { game, auto, place } = props
  const edit = useEdit()
  const system = useUnits()
  const texts = words().routines.path
  const [drag, setDrag] = useState<{ index: number; at: Point } | null>(null)
  const holder = useRef<HTMLDivElement>(null)
  const at = [...place, 'path']
  const path = auto.path ?? []
  const shown = drag ? path.with(drag.index, [path[drag.index]![0], ...drag.at]) : path

  // A finger on a point moves it and does not scroll. Said here because touch-action is not heeded on shapes of SVG.
  useEffect(() => {
    const desk = holder.current
    const hold = (event: TouchEvent) => {
      if ((event.target as Element).closest('[data-finger=moves]')) event.preventDefault()
    }
    desk?.addEventListener('touchstart', hold, { passive: false })
    return () => desk?.removeEventListener('touchstart', hold)
  }, [])

  const put = (next: PathPoint[], group: string | null = null) => {
    forgetTexts(edit, at)
    edit.set(at, next.length > 0 ? next : undefined, group)
  }
  const metresPerPixel = () => {
    const drawn = holder.current?.querySelector('svg')?.getBoundingClientRect().width ?? 640
    return game.field.length / (drawn - 2)
  }
  const moved = (index: number, [dx, dy]: Point): Point => onField(game, [path[index]![1] + dx, path[index]![2] + dy])
  const last = path.at(-1)
  return (
    <fieldset className="stack">
      <legend>{texts.title}</legend>
      <p className="soft small">{texts.help}</p>
      <div ref={holder} className="routine-field">
        <Measured drawn="path" data={shown} most={760}>
          {(width) => (
            <FieldMap
              game={game}
              width={width}
              name={`${texts.title}: ${auto.name}`}
              over={(frame) => (
                <PathMarks
                  {...{ game, auto, frame, path: shown, metresPerPixel, place: at }}
                  readOnly={edit.readOnly}
                  onAdd={(point) => put(withPoint(props, point))}
                  onDrag={(index, by) => setDrag({ index, at: moved(index, by) })}
                  onDrop={(index) => {
                    setDrag(null)
                    if (drag) put(path.with(index, [path[index]![0], ...drag.at]))
                  }}
                  onCancel={() => setDrag(null)}
                  onStep={(index, [x, y]) =>
                    put(
                      path.with(index, [path[index]![0], ...moved(index, [x * 0.05, y * 0.05])]),
                      `path/${auto.id}/${index}`,
                    )
                  }
                  onRemove={(index) => put(path.toSpliced(index, 1))}
                />
              )}
            />
          )}
        </Measured>
      </div>
      {last ? (
        <p>{texts.whole(sayDistance(pathLength(path), system), seconds(last[0]))}</p>
      ) : (
        <p className="soft">{texts.none}</p>
      )}
      {problemAt(edit.problems, at) && <p className="loss">{problemAt(edit.problems, at)}</p>}
      {path.map((_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a point has nothing of its own but its place
        <div key={index} className="form-grid routine-point">
          <NumberField
            place={[...at, index, 0]}
            label={texts.time(texts.point(index + 1))}
            unit="s"
            min={0}
            max={60}
            step={0.1}
          />
          <Coordinates place={[...at, index]} name={texts.point(index + 1)} />
          {!edit.readOnly && (
            <div style={{ alignSelf: 'end' }}>
              <Button
                size="compact-md"
                variant="subtle"
                aria-label={words().routines.row.remove(texts.point(index + 1))}
                onClick={() => put(path.toSpliced(index, 1))}
              >
                {words().routines.row.short}
              </Button>
            </div>
          )}
        </div>
      ))}
      {!edit.readOnly && (
        <div className="row">
          <Button
            size="compact-md"
            variant="default"
            disabled={path.length >= 2000}
            onClick={() => put(withPoint(props, null))}
          >
            {texts.add}
          </Button>
          {path.length > 0 && (
            <Button size="compact-md" variant="subtle" onClick={() => put([])}>
              {texts.clear}
            </Button>
          )}
        </div>
      )}
    </fieldset>
  )
}
