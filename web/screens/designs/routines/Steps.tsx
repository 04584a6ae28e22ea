import { Button } from '@mantine/core'
import type { AutoStep } from '../../../../src/model/documents/types.ts'
import { forgetTexts, useEdit } from '../../../shell/fields/EditContext.tsx'
import { NumberField } from '../../../shell/fields/NumberField.tsx'
import { SelectField } from '../../../shell/fields/SelectField.tsx'
import { words } from '../../../words/catalogue.ts'
import { YesNo } from '../../games/forms/Choices.tsx'
import type { RoutineProps } from './RoutineFields.tsx'

const named = (items: readonly { id: string; name: string }[]) =>
  items.map(({ id, name }) => ({ value: id, label: name }))

/** What a routine scores, in the order in which it does. */
export function Steps({ game, robot, auto, place }: RoutineProps) {
  const edit = useEdit()
  const texts = words().routines.steps
  const put = (steps: AutoStep[]) => {
    forgetTexts(edit, [...place, 'steps'])
    edit.set([...place, 'steps'], steps)
  }
  const add = () => {
    const last = auto.steps.at(-1)
    const goal = game.goals.find(({ id }) => robot.score[id]) ?? game.goals[0]
    const at = Math.min(game.clock.auto, (last?.at ?? 0) + 4)
    const piece = last?.piece ?? goal?.accepts[0] ?? ''
    put([
      ...auto.steps,
      { at, goal: last?.goal ?? goal?.id ?? '', piece, count: 1, success: 0.8, needsPrevious: false },
    ])
  }
  return (
    <fieldset className="stack">
      <legend>{texts.title}</legend>
      {auto.steps.map((step, index) => {
        const at = [...place, 'steps', index]
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a step has nothing of its own but its place
          <fieldset key={index} className="stack routine-row">
            <legend>{texts.one(index + 1)}</legend>
            <div className="form-grid">
              <NumberField
                place={[...at, 'at']}
                label={texts.at}
                unit="s"
                min={0}
                max={60}
                step={0.5}
                help={index === 0 ? texts.atHelp : undefined}
              />
              <SelectField place={[...at, 'goal']} label={texts.goal} choices={named(game.goals)} />
              <SelectField place={[...at, 'piece']} label={texts.piece} choices={named(game.pieces)} />
              <NumberField place={[...at, 'count']} label={texts.count} whole min={1} max={50} step={1} />
              <NumberField place={[...at, 'success']} label={texts.success} percent min={0} max={1} step={1} />
            </div>
            <div className="row">
              {index > 0 && <YesNo place={[...at, 'needsPrevious']} label={texts.needs} />}
              <RowButtons
                name={texts.one(index + 1)}
                first={index === 0}
                onUp={() => put(auto.steps.toSpliced(index - 1, 2, step, auto.steps[index - 1]!))}
                onRemove={() => put(auto.steps.toSpliced(index, 1))}
              />
            </div>
          </fieldset>
        )
      })}
      {!edit.readOnly && (
        <div>
          <Button size="compact-md" variant="default" disabled={auto.steps.length >= 50} onClick={add}>
            {texts.add}
          </Button>
        </div>
      )}
    </fieldset>
  )
}

/** What a routine takes from sources. */
export function Takes({ game, auto, place }: RoutineProps) {
  const edit = useEdit()
  const texts = words().routines.takes
  const takes = auto.takes ?? []
  const put = (next: typeof takes) => {
    forgetTexts(edit, [...place, 'takes'])
    edit.set([...place, 'takes'], next.length > 0 ? next : undefined)
  }
  if (game.sources.length === 0) return null
  return (
    <fieldset className="stack">
      <legend>{texts.title}</legend>
      {takes.length > 0 && <p className="soft small">{texts.help}</p>}
      {takes.map((_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: it has nothing of its own but its place
        <div key={index} className="form-grid">
          <SelectField
            place={[...place, 'takes', index, 'source']}
            label={texts.source}
            choices={named(game.sources)}
          />
          <NumberField
            place={[...place, 'takes', index, 'count']}
            label={texts.count}
            whole
            min={1}
            max={50}
            step={1}
          />
          <RowButtons name={texts.one(index + 1)} first onRemove={() => put(takes.toSpliced(index, 1))} />
        </div>
      ))}
      {!edit.readOnly && (
        <div>
          <Button
            size="compact-md"
            variant="default"
            disabled={takes.length >= 20}
            onClick={() => put([...takes, { source: game.sources[0]!.id, count: 1 }])}
          >
            {texts.add}
          </Button>
        </div>
      )}
    </fieldset>
  )
}

function RowButtons(props: { name: string; first: boolean; onUp?(): void; onRemove(): void }) {
  const texts = words().routines.row
  const edit = useEdit()
  if (edit.readOnly) return null
  return (
    <div className="row" style={{ alignSelf: 'end' }}>
      {props.onUp && !props.first && (
        <Button size="compact-md" variant="default" aria-label={texts.earlier(props.name)} onClick={props.onUp}>
          {texts.up}
        </Button>
      )}
      <Button size="compact-md" variant="subtle" aria-label={texts.remove(props.name)} onClick={props.onRemove}>
        {texts.short}
      </Button>
    </div>
  )
}
