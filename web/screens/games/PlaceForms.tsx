import type { ReactNode } from 'react'
import type { Game, Spot } from '../../../src/model/documents/types.ts'
import type { Place } from '../../data/difference.ts'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'

/** Sources, goals, finishes and starts, each with its spots. */
export function PlaceForms(props: { game: Game }) {
  const { game } = props
  return (
    <section className="sheet stack" aria-labelledby="places-title">
      <h2 id="places-title">The places</h2>
      {game.sources.map((source, index) => (
        <OnePlace key={source.id} kind="Source" place={['sources', index]} name={source.name} spots={source.spots}>
          {source.stock !== null && (
            <NumberField place={['sources', index, 'stock']} label="Pieces there" whole min={0} step={1} />
          )}
        </OnePlace>
      ))}
      {game.goals.map((goal, index) => (
        <OnePlace key={goal.id} kind="Goal" place={['goals', index]} name={goal.name} spots={goal.spots}>
          {goal.capacity !== null && (
            <NumberField place={['goals', index, 'capacity']} label="Holds at most" whole min={1} step={1} />
          )}
          {goal.award.kind === 'each' ? (
            <>
              <NumberField
                place={['goals', index, 'award', 'auto']}
                label="A piece in autonomous"
                unit="points"
                step={1}
              />
              <NumberField
                place={['goals', index, 'award', 'teleop']}
                label="A piece in teleop"
                unit="points"
                step={1}
              />
            </>
          ) : (
            <>
              <NumberField
                place={['goals', index, 'award', 'autoPerSecond']}
                label="A second in autonomous"
                unit="points"
              />
              <NumberField
                place={['goals', index, 'award', 'teleopPerSecond']}
                label="A second in teleop"
                unit="points"
              />
            </>
          )}
        </OnePlace>
      ))}
      {game.finishes.map((finish, index) => (
        <OnePlace key={finish.id} kind="Finish" place={['finishes', index]} name={finish.name} spots={finish.spots}>
          <NumberField place={['finishes', index, 'points']} label="Points" unit="points" step={1} />
        </OnePlace>
      ))}
      <details className="fold">
        <summary>Starts</summary>
        <div className="form-grid">
          {game.starts.map((start, index) => (
            <Coordinates key={start.id} place={['starts', index, 'at']} name={start.name} />
          ))}
        </div>
      </details>
    </section>
  )
}

function OnePlace(props: { kind: string; place: Place; name: string; spots: Spot[]; children?: ReactNode }) {
  const { kind, place, name, spots } = props
  return (
    <details className="fold">
      <summary>
        {kind}: {name}
      </summary>
      <div className="stack" style={{ paddingTop: '0.5rem' }}>
        <div className="form-grid">
          <TextField place={[...place, 'name']} label="Name" required />
          <NumberField place={[...place, 'slots']} label="Robots at once" whole min={1} step={1} />
          {props.children}
        </div>
        <div className="form-grid">
          {spots.map((spot, index) => (
            <Coordinates key={spot.id} place={[...place, 'spots', index, 'at']} name={`Spot ${index + 1}`} />
          ))}
        </div>
      </div>
    </details>
  )
}

function Coordinates(props: { place: Place; name: string }) {
  return (
    <>
      <NumberField place={[...props.place, 0]} label={`${props.name}, along`} unit="m" min={0} step={0.05} />
      <NumberField place={[...props.place, 1]} label={`${props.name}, across`} unit="m" min={0} step={0.05} />
    </>
  )
}
