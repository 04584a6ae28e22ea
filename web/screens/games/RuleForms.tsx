import type { Game } from '../../../src/model/documents/types.ts'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { SelectField } from '../../shell/fields/SelectField.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { words } from '../../words/catalogue.ts'
import { Present } from './forms/Choices.tsx'

/** Name, clock, field, fouls and limits. */
export function RuleForms(props: { game: Game }) {
  const { game } = props
  const texts = words().games.rules
  const most = 10_000
  return (
    <section className="sheet stack" aria-labelledby="rules-title">
      <h2 id="rules-title">{texts.title}</h2>
      <div className="form-grid">
        <TextField place={['name']} label={texts.name} required />
        <NumberField place={['clock', 'auto']} label={texts.auto} unit="s" min={0} max={60} step={1} />
        <NumberField
          place={['clock', 'pause']}
          label={texts.pause}
          unit="s"
          min={0}
          max={60}
          step={1}
          help={texts.pauseHelp}
        />
        <NumberField place={['clock', 'teleop']} label={texts.teleop} unit="s" above={0} max={600} step={1} />
        <NumberField place={['clock', 'endgame']} label={texts.endgame} unit="s" min={0} max={600} step={1} />
        <NumberField place={['field', 'length']} label={texts.length} quantity="length" min={1} max={200} />
        <NumberField place={['field', 'width']} label={texts.width} quantity="length" min={1} max={200} />
        <NumberField
          place={['field', 'clearance']}
          label={texts.clearance}
          quantity="length"
          min={0}
          max={5}
          step={0.01}
          help={texts.clearanceHelp}
        />
        <SelectField
          place={['field', 'symmetry']}
          label={texts.symmetry}
          choices={[
            { value: 'mirror', label: texts.mirror },
            { value: 'rotate', label: texts.rotate },
          ]}
        />
        <NumberField place={['fouls', 'minor']} label={texts.minor} unit={texts.points} min={0} max={most} step={1} />
        <NumberField place={['fouls', 'major']} label={texts.major} unit={texts.points} min={0} max={most} step={1} />
      </div>
      <Present place={['leave']} label={texts.leaves} fresh={{ points: 2 }} />
      {game.leave && (
        <div className="form-grid">
          <NumberField
            place={['leave', 'points']}
            label={texts.leave}
            unit={texts.points}
            min={-most}
            max={most}
            step={1}
          />
        </div>
      )}
      <Present place={['limits']} label={texts.limited} fresh={{ mass: 50, cost: 4000 }} absent={undefined} />
      {game.limits && (
        <div className="form-grid">
          <NumberField place={['limits', 'mass']} label={texts.mass} quantity="mass" min={0} max={most} step={0.5} />
          <NumberField
            place={['limits', 'cost']}
            label={texts.cost}
            min={0}
            max={1e9}
            step={100}
            help={texts.costHelp}
          />
        </div>
      )}
    </section>
  )
}
