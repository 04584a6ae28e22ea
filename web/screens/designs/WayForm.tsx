import { Button, Checkbox, NativeSelect } from '@mantine/core'
import { useMemo } from 'react'
import { checkOption, within } from '../../../src/model/documents/index.ts'
import type { OptionRecord } from '../../../src/model/documents/records.ts'
import type { FinishMode, Game, Robot, Role } from '../../../src/model/documents/types.ts'
import { assembleOption } from '../../data/assemble.ts'
import type { Stored } from '../../data/documents.ts'
import { EditProvider, useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { SelectField } from '../../shell/fields/SelectField.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { words } from '../../words/catalogue.ts'
import { SaveBar } from '../documents/SaveBar.tsx'
import { useEditing } from '../documents/useEditing.ts'
import { Present } from '../games/forms/Choices.tsx'

/** Where it starts, what it does, how it finishes, and what the rules do not let us say. */
export function WayForm(props: { game: Game; robot: Robot; stored: Stored<'option'>; onCopied(id: string): void }) {
  const texts = words().designs.ways
  const { game, robot, stored } = props
  const editing = useEditing({ kind: 'option', stored, keys: false })
  const { draft } = editing
  const { option } = draft.value
  const problems = useMemo(
    () =>
      within(
        ['option'],
        checkOption(game, assembleOption(draft.value, robot)).filter(({ path }) => path[0] !== 'robot'),
      ),
    [game, robot, draft.value],
  )
  const finishes = game.finishes.length > 0
  const holding = game.goals.filter(({ id, award }) => award.kind === 'hold' && robot.score[id])
  return (
    <EditProvider value={editing.fields(problems)}>
      <SaveBar of={editing} href={null} onCopied={props.onCopied} />
      {problems.length > 0 && (
        <ul role="alert" className="loss">
          {problems.map(({ path, message }) => (
            <li key={`${path.join('/')} ${message}`}>{message}</li>
          ))}
        </ul>
      )}
      <TextField place={['option', 'name']} label={texts.name} required />
      <div className="form-grid">
        <SelectField
          place={['option', 'start']}
          label={texts.start}
          choices={game.starts.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <SelectField
          place={['option', 'auto']}
          label={texts.auto}
          choices={[
            { value: null, label: texts.noRoutine },
            ...robot.autos.map(({ id, name }) => ({ value: id, label: name })),
          ]}
        />
        {(finishes || option.finish.mode === 'always') && <FinishChoice game={game} finish={option.finish} />}
      </div>
      <RoleChoice label={texts.sources} list="sources" places={game.sources} chosen={option.role.sources} />
      <RoleChoice label={texts.goals} list="goals" places={game.goals} chosen={option.role.goals} />
      {finishes && (
        <RoleChoice label={texts.finishes} list="finishes" places={game.finishes} chosen={option.role.finishes} />
      )}
      {holding.length > 0 && (
        <div className="form-grid">
          {holding.map((goal) => (
            <NumberField
              key={goal.id}
              place={['option', 'holdSeconds', goal.id]}
              label={texts.hold(goal.name)}
              unit="s"
              min={0}
              max={300}
              step={0.5}
            />
          ))}
        </div>
      )}
      <Defence game={game} defend={option.role.defend} />
      <Adjustments rows={option.adjust} />
    </EditProvider>
  )
}

function FinishChoice(props: { game: Game; finish: FinishMode }) {
  const { game, finish } = props
  const texts = words().designs.ways
  const edit = useEdit()
  const modes: { [mode in FinishMode['mode']]: FinishMode } = {
    best: { mode: 'best' },
    skip: { mode: 'skip' },
    always: { mode: 'always', at: Math.min(game.clock.endgame, game.clock.teleop) },
  }
  return (
    <>
      <NativeSelect
        label={texts.finish}
        value={finish.mode}
        data={Object.entries(texts.modes).map(([value, label]) => ({ value, label }))}
        onChange={(event) => edit.set(['option', 'finish'], modes[event.currentTarget.value as FinishMode['mode']])}
      />
      {finish.mode === 'always' && (
        <NumberField
          place={['option', 'finish', 'at']}
          label={texts.at}
          unit="s"
          min={0}
          max={game.clock.teleop}
          step={0.5}
        />
      )}
    </>
  )
}

function RoleChoice(props: {
  label: string
  list: 'sources' | 'goals' | 'finishes'
  places: { id: string; name: string }[]
  chosen: string[]
}) {
  const edit = useEdit()
  return (
    <fieldset>
      <legend>{props.label}</legend>
      <div className="row">
        {props.places.map(({ id, name }) => (
          <Checkbox
            key={id}
            label={name}
            checked={props.chosen.includes(id)}
            onChange={(event) =>
              edit.set(
                ['option', 'role', props.list],
                event.currentTarget.checked ? [...props.chosen, id] : props.chosen.filter((other) => other !== id),
              )
            }
          />
        ))}
      </div>
    </fieldset>
  )
}

/** Hindering an opponent between two times left. */
function Defence(props: { game: Game; defend: Role['defend'] }) {
  const { game, defend } = props
  const edit = useEdit()
  const texts = words().designs.ways
  const place = ['option', 'role', 'defend']
  const time = { unit: 's', min: 0, max: game.clock.teleop, step: 5 }
  return (
    <fieldset className="stack">
      <Present
        place={place}
        label={texts.defends}
        fresh={{ mark: 0, from: Math.round(game.clock.teleop / 2), until: 0 }}
      />
      {defend && (
        <>
          <div className="form-grid">
            <NativeSelect
              label={texts.mark}
              disabled={edit.readOnly}
              value={String(defend.mark)}
              data={[0, 1, 2].map((mark) => ({ value: String(mark), label: texts.position(mark + 1) }))}
              onChange={(event) => edit.set([...place, 'mark'], Number(event.currentTarget.value))}
            />
            <NumberField place={[...place, 'from']} label={texts.from} {...time} />
            <NumberField place={[...place, 'until']} label={texts.until} {...time} />
          </div>
          <p className="soft small">{texts.defendHelp}</p>
        </>
      )}
    </fieldset>
  )
}

function Adjustments(props: { rows: OptionRecord['option']['adjust'] }) {
  const edit = useEdit()
  const { rows } = props
  const texts = words().designs.ways
  return (
    <fieldset className="stack">
      <legend>{texts.adjust}</legend>
      {rows.map((_, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a line has nothing of its own but its place
        <div key={index} className="form-grid">
          <TextField place={['option', 'adjust', index, 'label']} label={texts.what} required />
          <NumberField place={['option', 'adjust', index, 'points']} label={texts.points} />
          <NumberField place={['option', 'adjust', index, 'rankingPoints']} label={texts.rankingPoints} />
          <div style={{ alignSelf: 'end' }}>
            <Button
              variant="subtle"
              size="compact-md"
              aria-label={texts.removeAdjust(index + 1)}
              onClick={() =>
                edit.set(
                  ['option', 'adjust'],
                  rows.filter((__, other) => other !== index),
                )
              }
            >
              {texts.remove}
            </Button>
          </div>
        </div>
      ))}
      <div>
        <Button
          variant="default"
          size="compact-md"
          onClick={() =>
            edit.set(['option', 'adjust'], [...rows, { label: texts.freshAdjust, points: 0, rankingPoints: 0 }])
          }
        >
          {texts.addAdjust}
        </Button>
      </div>
    </fieldset>
  )
}
