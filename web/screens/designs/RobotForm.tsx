import { useState } from 'react'
import type { Game } from '../../../src/model/documents/types.ts'
import type { Place } from '../../data/difference.ts'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { DriveNumbers } from './LegForm.tsx'

/** What belongs to the whole robot. Its many fields are drawn only when they are open, so that an edit elsewhere is quick. */
export function RobotForm(props: { game: Game }) {
  const [open, setOpen] = useState(false)
  return (
    <details className="fold" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>The robot: size, drive, form, reliability</summary>
      {open && <RobotFields game={props.game} />}
    </details>
  )
}

function RobotFields(props: { game: Game }) {
  const at = (...place: (string | number)[]): Place => ['robot', ...place]
  return (
    <div className="stack" style={{ paddingTop: '0.75rem' }}>
      <div className="form-grid">
        <TextField place={at('name')} label="Name" required />
        <NumberField
          place={at('footprint', 'length')}
          label="Length with bumpers"
          quantity="length"
          above={0}
          max={3}
          step={0.01}
        />
        <NumberField
          place={at('footprint', 'width')}
          label="Width with bumpers"
          quantity="length"
          above={0}
          max={3}
          step={0.01}
        />
        {props.game.pieces.map((piece) => (
          <NumberField
            key={piece.id}
            place={at('carries', piece.id)}
            label={`Carries, ${piece.name}`}
            whole
            min={0}
            max={60}
            step={1}
          />
        ))}
        <NumberField
          place={at('form', 'spread')}
          label="Spread of form"
          unit="×"
          min={1}
          max={3}
          step={0.01}
          help="One factor per match on all its times: battery, driver, damage"
        />
        <NumberField place={at('reliability', 'absent')} label="Does not play" percent min={0} max={1} step={1} />
        <NumberField place={at('reliability', 'stops')} label="Stops in the match" percent min={0} max={1} step={1} />
      </div>
      <DriveNumbers />
    </div>
  )
}
