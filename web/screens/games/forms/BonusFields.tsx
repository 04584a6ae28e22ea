import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { Bonus, Game, Metric } from '../../../../src/model/documents/types.ts'
import type { Place } from '../../../data/difference.ts'
import { useEdit } from '../../../shell/fields/EditContext.tsx'
import { NumberField } from '../../../shell/fields/NumberField.tsx'
import { SelectField } from '../../../shell/fields/SelectField.tsx'
import { TextField } from '../../../shell/fields/TextField.tsx'
import { words } from '../../../words/catalogue.ts'
import { Choices } from './Choices.tsx'

const holdGoals = (game: Game) => game.goals.filter(({ award }) => award.kind === 'hold')

/** A metric of a kind, counting everything that it could count. */
function metricOf(game: Game, kind: Metric['kind']): Metric {
  if (kind === 'pieces') return { kind, goals: game.goals.map(({ id }) => id) }
  if (kind === 'finished') return { kind, finishes: game.finishes.map(({ id }) => id) }
  if (kind === 'heldSeconds') return { kind, goal: holdGoals(game)[0]?.id ?? '' }
  return { kind }
}

/** A bonus: what is counted, of whom, the number to reach, and what it brings. */
export function BonusFields(props: { game: Game; bonus: Bonus; place: Place }) {
  const { game, bonus, place } = props
  const edit = useEdit()
  const texts = words().games.bonuses
  const { metric } = bonus
  return (
    <>
      <div className="form-grid">
        <TextField place={[...place, 'name']} label={words().games.members.name} required />
        <NumberField place={[...place, 'rankingPoints']} label={texts.rankingPoints} min={-100} max={100} step={1} />
        <NumberField place={[...place, 'points']} label={texts.points} min={-10_000} max={10_000} step={1} />
        <SelectField
          place={[...place, 'scope']}
          label={texts.scope}
          choices={[
            { value: 'own', label: texts.own },
            { value: 'both', label: texts.both },
          ]}
        />
        <NativeSelect
          className="wide-choice"
          label={texts.metric}
          disabled={edit.readOnly}
          value={metric.kind}
          data={Object.entries(texts.kinds).map(([value, label]) => ({
            value,
            label,
            disabled: value === 'heldSeconds' && holdGoals(game).length === 0 && metric.kind !== 'heldSeconds',
          }))}
          onChange={(event) =>
            edit.set([...place, 'metric'], metricOf(game, event.currentTarget.value as Metric['kind']))
          }
        />
        {metric.kind === 'heldSeconds' && (
          <SelectField
            place={[...place, 'metric', 'goal']}
            label={texts.goal}
            choices={
              holdGoals(game).some(({ id }) => id === metric.goal)
                ? holdGoals(game).map(({ id, name }) => ({ value: id, label: name }))
                : [
                    { value: metric.goal, label: metric.goal || texts.noHold },
                    ...holdGoals(game).map(({ id, name }) => ({ value: id, label: name })),
                  ]
            }
          />
        )}
      </div>
      {metric.kind === 'pieces' && (
        <Choices place={[...place, 'metric', 'goals']} label={texts.goals} of={game.goals} />
      )}
      {metric.kind === 'finished' && (
        <Choices place={[...place, 'metric', 'finishes']} label={texts.finishes} of={game.finishes} />
      )}
      <Threshold bonus={bonus} place={[...place, 'atLeast']} />
    </>
  )
}

function Threshold(props: { bonus: Bonus; place: Place }) {
  const { bonus, place } = props
  const edit = useEdit()
  const texts = words().games.bonuses
  const { atLeast } = bonus
  const same = typeof atLeast === 'number'
  const rules = { min: 0, max: 100_000, step: 1 }
  return (
    <fieldset className="stack">
      <legend>{texts.threshold}</legend>
      <div className="form-grid">
        <NativeSelect
          className="wide-choice"
          aria-label={texts.threshold}
          label={texts.threshold}
          disabled={edit.readOnly}
          value={same ? 'same' : 'byLevel'}
          data={[
            { value: 'same', label: texts.same },
            { value: 'byLevel', label: texts.byLevel },
          ]}
          onChange={(event) => {
            const wish = event.currentTarget.value
            if (wish === 'same') edit.set(place, same ? atLeast : (Object.values(atLeast)[0] ?? 10))
            else edit.set(place, same ? { [texts.levelFresh(1)]: atLeast } : atLeast)
          }}
        />
        {same && <NumberField place={place} label={texts.atLeast} {...rules} />}
      </div>
      {!same &&
        Object.keys(atLeast).map((level) => (
          <div key={level} className="row" style={{ alignItems: 'end' }}>
            <LevelName level={level} all={atLeast} place={place} />
            <NumberField place={[...place, level]} label={texts.atLevel(level)} {...rules} />
            {!edit.readOnly && Object.keys(atLeast).length > 1 && (
              <Button
                size="compact-md"
                variant="subtle"
                aria-label={texts.removeLevel(level)}
                onClick={() => edit.set([...place, level], undefined)}
              >
                {words().games.members.short.remove}
              </Button>
            )}
          </div>
        ))}
      {!same && !edit.readOnly && (
        <div>
          <Button
            size="compact-md"
            variant="default"
            onClick={() => {
              let number = Object.keys(atLeast).length + 1
              while (texts.levelFresh(number) in atLeast) number++
              edit.set([...place, texts.levelFresh(number)], Object.values(atLeast).at(-1) ?? 10)
            }}
          >
            {texts.addLevel}
          </Button>
        </div>
      )}
    </fieldset>
  )
}

/** The word for a level is a key: it is taken over when the field is left, so that no half-typed word meets another one. */
function LevelName(props: { level: string; all: { [level: string]: number }; place: Place }) {
  const { level, all, place } = props
  const edit = useEdit()
  const texts = words().games.bonuses
  const [text, setText] = useState(level)
  const word = text.trim()
  const error = word === '' ? texts.levelMissing : word !== level && word in all ? texts.levelTaken : null
  const keep = () => {
    if (error !== null || word === level) return
    edit.set(place, Object.fromEntries(Object.entries(all).map(([key, value]) => [key === level ? word : key, value])))
  }
  return (
    <TextInput
      label={texts.level}
      description={texts.levelHelp}
      value={text}
      error={error}
      readOnly={edit.readOnly}
      maxLength={100}
      onChange={(event) => setText(event.currentTarget.value)}
      onBlur={keep}
      onKeyDown={(event) => {
        if (event.key === 'Enter') keep()
      }}
    />
  )
}
