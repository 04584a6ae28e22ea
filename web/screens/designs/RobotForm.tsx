import { memo, useState } from 'react'
import type { Game, Robot } from '../../../src/model/documents/types.ts'
import type { Place } from '../../data/difference.ts'
import { problemAt, useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { SelectField } from '../../shell/fields/SelectField.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { words } from '../../words/catalogue.ts'
import { Present } from '../games/forms/Choices.tsx'
import { DriveNumbers } from './LegForm.tsx'

const at = (...place: (string | number)[]): Place => ['robot', ...place]

/** What belongs to the whole robot. Its many fields are drawn only when they are open, so that an edit elsewhere is quick. */
export const RobotForm = memo(function RobotForm(props: { game: Game; robot: Robot }) {
  const [open, setOpen] = useState(false)
  return (
    <details className="fold" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words().designs.robot.title}</summary>
      {open && (
        <div className="stack" style={{ paddingTop: '0.75rem' }}>
          <Size {...props} />
          <Loads {...props} />
          <Standing />
        </div>
      )}
    </details>
  )
})

function Size(props: { game: Game; robot: Robot }) {
  const texts = words().designs.robot
  const size = { quantity: 'length', min: 0.05, max: 5, step: 0.01 } as const
  return (
    <>
      <h3>{texts.size}</h3>
      <div className="form-grid">
        <TextField place={at('name')} label={texts.name} required />
        <NumberField place={at('footprint', 'length')} label={texts.length} {...size} />
        <NumberField place={at('footprint', 'width')} label={texts.width} {...size} />
      </div>
      <DriveNumbers {...props} />
    </>
  )
}

/** What it holds at once, and what it begins with. */
function Loads({ game, robot }: { game: Game; robot: Robot }) {
  const edit = useEdit()
  const texts = words().designs.robot
  const problem = problemAt(edit.problems, at('carries'))
  const first = game.pieces.find(({ id }) => robot.carries[id] !== undefined)?.id ?? game.pieces[0]?.id
  return (
    <>
      <h3>{texts.loads}</h3>
      {game.pieces.map(({ id, name }) => (
        <div key={id} className="stack">
          <Present place={at('carries', id)} label={texts.carries(name)} fresh={1} absent={undefined} />
          {robot.carries[id] !== undefined && (
            <div className="form-grid">
              <NumberField
                place={at('carries', id)}
                label={texts.most(name)}
                unit={texts.pieces}
                whole
                min={1}
                max={100}
                step={1}
                help={texts.mostHelp}
              />
            </div>
          )}
        </div>
      ))}
      {problem && <p className="loss small">{problem}</p>}
      {first !== undefined && (
        <Present place={at('preload')} label={texts.preloaded} fresh={{ piece: first, count: 1 }} />
      )}
      {robot.preload && (
        <div className="form-grid">
          <SelectField
            place={at('preload', 'piece')}
            label={texts.preloadPiece}
            choices={game.pieces.map(({ id, name }) => ({ value: id, label: name }))}
          />
          <NumberField
            place={at('preload', 'count')}
            label={texts.preload}
            unit={texts.pieces}
            whole
            min={1}
            max={100}
            step={1}
          />
        </div>
      )}
    </>
  )
}

/** What varies from match to match, what fails, what is fouled, and how it defends. */
function Standing() {
  const texts = words().designs.robot
  const share = { percent: true, min: 0, max: 1, step: 1 } as const
  const perMatch = { min: 0, max: 100, step: 0.05, unit: texts.perMatch }
  const perMinute = { min: 0, max: 100, step: 0.05, unit: texts.perMinute }
  return (
    <>
      <h3>{texts.formTitle}</h3>
      <div className="form-grid">
        <NumberField
          place={at('form', 'spread')}
          label={texts.form}
          unit="×"
          min={1}
          max={3}
          step={0.01}
          help={texts.formHelp}
        />
        <NumberField place={at('reliability', 'absent')} label={texts.absent} help={texts.absentHelp} {...share} />
        <NumberField place={at('reliability', 'stops')} label={texts.stops} help={texts.stopsHelp} {...share} />
        <NumberField place={at('fouls', 'minorPerMatch')} label={texts.minor} help={texts.foulsHelp} {...perMatch} />
        <NumberField place={at('fouls', 'majorPerMatch')} label={texts.major} help={texts.foulsHelp} {...perMatch} />
      </div>
      <h3>{texts.defenceTitle}</h3>
      <div className="form-grid">
        <NumberField
          place={at('defence', 'slowdown')}
          label={texts.slowdown}
          percent
          min={0}
          max={10}
          step={5}
          help={texts.slowdownHelp}
        />
        <NumberField place={at('defence', 'minorPerMinute')} label={texts.minorDefending} {...perMinute} />
        <NumberField place={at('defence', 'majorPerMinute')} label={texts.majorDefending} {...perMinute} />
      </div>
      <p className="soft small">{texts.onlyMatch}</p>
    </>
  )
}
