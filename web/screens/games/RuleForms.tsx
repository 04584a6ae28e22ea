import type { Game } from '../../../src/model/documents/types.ts'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { SelectField } from '../../shell/fields/SelectField.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'

/** Name, clock, field, and what is paid for what. */
export function RuleForms(props: { game: Game }) {
  const { game } = props
  return (
    <section className="sheet stack" aria-labelledby="rules-title">
      <h2 id="rules-title">The rules</h2>
      <div className="form-grid">
        <TextField place={['name']} label="Name of the game" required />
        <NumberField place={['clock', 'auto']} label="Autonomous" unit="s" min={0} max={600} step={1} />
        <NumberField place={['clock', 'pause']} label="Pause" unit="s" min={0} max={600} step={1} />
        <NumberField place={['clock', 'teleop']} label="Teleop" unit="s" above={0} max={600} step={1} />
        <NumberField place={['clock', 'endgame']} label="Endgame, the last" unit="s" min={0} max={600} step={1} />
        <NumberField place={['field', 'length']} label="Field length" unit="m" above={0} max={200} />
        <NumberField place={['field', 'width']} label="Field width" unit="m" above={0} max={200} />
        <NumberField
          place={['field', 'clearance']}
          label="Clearance to obstacles"
          unit="m"
          min={0}
          max={5}
          step={0.01}
        />
        <SelectField
          place={['field', 'symmetry']}
          label="The other alliance sees it"
          choices={[
            { value: 'mirror', label: 'mirrored' },
            { value: 'rotate', label: 'turned round' },
          ]}
        />
        {game.leave && (
          <NumberField place={['leave', 'points']} label="Moving off the start" unit="points" min={0} step={1} />
        )}
        <NumberField place={['fouls', 'minor']} label="Minor foul, to the others" unit="points" min={0} step={1} />
        <NumberField place={['fouls', 'major']} label="Major foul, to the others" unit="points" min={0} step={1} />
      </div>
    </section>
  )
}
