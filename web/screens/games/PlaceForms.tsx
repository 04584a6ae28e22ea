import type { Game } from '../../../src/model/documents/types.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { words } from '../../words/catalogue.ts'
import { withPlace, withStart } from './field/additions.ts'
import { GoalFields, SourceFields } from './forms/fields.tsx'
import { Members } from './forms/Members.tsx'
import { type Removed, withoutFinish, withoutGoal } from './forms/references.ts'
import { Coordinates, SpotFields } from './forms/SpotFields.tsx'

/** Sources, goals, finishes and starts, each with its spots. */
export function PlaceForms(props: { game: Game; onRemoved(removed: Removed, name: string): void }) {
  const { game, onRemoved } = props
  const edit = useEdit()
  const texts = words().games.places
  const name = words().games.members.name
  return (
    <section className="sheet stack" aria-labelledby="places-title">
      <h2 id="places-title">{texts.title}</h2>
      <p className="soft small">{texts.help}</p>
      <h3>{texts.sources}</h3>
      <Members
        place={['sources']}
        items={game.sources}
        one={texts.source}
        addLabel={texts.addSource}
        onAdd={() => edit.set([], withPlace(game, 'sources').game)}
        onRemove={(source) =>
          onRemoved(
            { game: { ...game, sources: game.sources.filter((one) => one !== source) }, others: [] },
            source.name,
          )
        }
      >
        {(source, index) => (
          <>
            <SourceFields game={game} source={source} place={['sources', index]} />
            <SpotFields game={game} list="sources" index={index} />
          </>
        )}
      </Members>
      <h3>{texts.goals}</h3>
      <Members
        place={['goals']}
        items={game.goals}
        one={texts.goal}
        addLabel={texts.addGoal}
        onAdd={() => edit.set([], withPlace(game, 'goals').game)}
        onRemove={(goal) => onRemoved(withoutGoal(game, goal.id), goal.name)}
      >
        {(goal, index) => (
          <>
            <GoalFields game={game} goal={goal} place={['goals', index]} />
            <SpotFields game={game} list="goals" index={index} />
          </>
        )}
      </Members>
      <h3>{texts.finishes}</h3>
      <Members
        place={['finishes']}
        items={game.finishes}
        one={texts.finish}
        addLabel={texts.addFinish}
        onAdd={() => edit.set([], withPlace(game, 'finishes').game)}
        onRemove={(finish) => onRemoved(withoutFinish(game, finish.id), finish.name)}
      >
        {(_, index) => (
          <>
            <div className="form-grid">
              <TextField place={['finishes', index, 'name']} label={name} required />
              <NumberField
                place={['finishes', index, 'points']}
                label={texts.points}
                unit={words().games.rules.points}
                min={-10_000}
                max={10_000}
                step={1}
              />
              <NumberField
                place={['finishes', index, 'slots']}
                label={texts.slots}
                whole
                min={1}
                max={20}
                step={1}
                help={texts.slotsHelp}
              />
            </div>
            <SpotFields game={game} list="finishes" index={index} />
          </>
        )}
      </Members>
      <h3>{texts.starts}</h3>
      <Members
        place={['starts']}
        items={game.starts}
        one={texts.start}
        addLabel={texts.addStart}
        least={1}
        onAdd={() => edit.set([], withStart(game).game)}
        onRemove={(start) =>
          onRemoved({ game: { ...game, starts: game.starts.filter((one) => one !== start) }, others: [] }, start.name)
        }
      >
        {(start, index) => (
          <div className="form-grid">
            <TextField place={['starts', index, 'name']} label={name} required />
            <Coordinates place={['starts', index, 'at']} name={start.name} />
          </div>
        )}
      </Members>
    </section>
  )
}
