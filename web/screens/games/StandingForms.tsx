import { Button, Checkbox, NativeSelect } from '@mantine/core'
import type { Game, Ranking } from '../../../src/model/documents/types.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { SelectField } from '../../shell/fields/SelectField.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { words } from '../../words/catalogue.ts'
import { freeId } from './field/fill.ts'
import { BonusFields } from './forms/BonusFields.tsx'
import { Choices } from './forms/Choices.tsx'
import { Members } from './forms/Members.tsx'

const idsOf = (items: readonly { id: string }[]) => new Set(items.map(({ id }) => id))

/** What is paid for several things together, and how teams are ranked. */
export function StandingForms(props: { game: Game }) {
  const { game } = props
  const edit = useEdit()
  const texts = words().games
  return (
    <>
      <section className="sheet stack" aria-labelledby="sets-title">
        <h2 id="sets-title">{texts.sets.title}</h2>
        <p className="soft small">{texts.sets.help}</p>
        <Members
          place={['sets']}
          items={game.sets}
          one={texts.sets.one}
          addLabel={texts.sets.add}
          onAdd={() =>
            edit.set(
              ['sets'],
              [
                ...game.sets,
                {
                  id: freeId(idsOf(game.sets), 'set-'),
                  name: texts.sets.fresh(game.sets.length + 1),
                  needs: {},
                  points: 1,
                },
              ],
            )
          }
          onRemove={(set) =>
            edit.set(
              ['sets'],
              game.sets.filter((one) => one !== set),
            )
          }
        >
          {(set, index) => <SetFields game={game} set={set} index={index} />}
        </Members>
      </section>
      <section className="sheet stack" aria-labelledby="bonuses-title">
        <h2 id="bonuses-title">{texts.bonuses.title}</h2>
        <p className="soft small">{texts.bonuses.help}</p>
        <Members
          place={['bonuses']}
          items={game.bonuses}
          one={texts.bonuses.one}
          addLabel={texts.bonuses.add}
          onAdd={() =>
            edit.set(
              ['bonuses'],
              [
                ...game.bonuses,
                {
                  id: freeId(idsOf(game.bonuses), 'bonus-'),
                  name: texts.bonuses.fresh(game.bonuses.length + 1),
                  rankingPoints: 1,
                  points: 0,
                  metric: { kind: 'autoPoints' },
                  atLeast: 10,
                  scope: 'own',
                },
              ],
            )
          }
          onRemove={(bonus) =>
            edit.set(
              ['bonuses'],
              game.bonuses.filter((one) => one !== bonus),
            )
          }
        >
          {(bonus, index) => <BonusFields game={game} bonus={bonus} place={['bonuses', index]} />}
        </Members>
      </section>
      <RankingForm game={game} />
    </>
  )
}

function SetFields(props: { game: Game; set: Game['sets'][number]; index: number }) {
  const { game, set, index } = props
  const edit = useEdit()
  const texts = words().games.sets
  const needs = ['sets', index, 'needs']
  return (
    <>
      <div className="form-grid">
        <TextField place={['sets', index, 'name']} label={words().games.members.name} required />
        <NumberField
          place={['sets', index, 'points']}
          label={texts.points}
          unit={words().games.rules.points}
          min={-10_000}
          max={10_000}
          step={1}
        />
      </div>
      <fieldset>
        <legend>{texts.needs}</legend>
        <div className="row">
          {game.goals.map(({ id, name }) => (
            <Checkbox
              key={id}
              label={name}
              disabled={edit.readOnly}
              checked={id in set.needs}
              onChange={(event) => edit.set([...needs, id], event.currentTarget.checked ? 1 : undefined)}
            />
          ))}
        </div>
      </fieldset>
      <div className="form-grid">
        {game.goals
          .filter(({ id }) => id in set.needs)
          .map(({ id, name }) => (
            <NumberField key={id} place={[...needs, id]} label={texts.needed(name)} whole min={1} max={1000} step={1} />
          ))}
      </div>
    </>
  )
}

type Breaker = Ranking['then'][number]
const simple = ['score', 'autoPoints', 'finishPoints'] as const

function RankingForm(props: { game: Game }) {
  const { game } = props
  const edit = useEdit()
  const all = words().games
  const texts = all.ranking
  const place = ['ranking', 'then']
  const breakers = game.ranking.then
  const points = { unit: texts.unit, min: -100, max: 100, step: 1 }
  const put = (next: Breaker[]) => edit.set(place, next)
  const next = simple.find((one) => !breakers.includes(one)) ?? 'score'
  return (
    <section className="sheet stack" aria-labelledby="ranking-title">
      <h2 id="ranking-title">{texts.title}</h2>
      <div className="form-grid">
        <NumberField place={['ranking', 'win']} label={texts.win} {...points} />
        <NumberField place={['ranking', 'tie']} label={texts.tie} {...points} />
        <NumberField place={['ranking', 'loss']} label={texts.loss} {...points} />
        <SelectField
          place={['ranking', 'per']}
          label={texts.per}
          choices={[
            { value: 'match', label: texts.match },
            { value: 'total', label: texts.total },
          ]}
        />
      </div>
      <h3>{texts.among}</h3>
      {breakers.map((breaker, index) => {
        const kind = typeof breaker === 'string' ? breaker : 'pieces'
        const name = texts.breaker(index + 1)
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a tie-breaker has nothing of its own but its place
          <div key={index} className="stack">
            <div className="row" style={{ alignItems: 'end' }}>
              <NativeSelect
                label={name}
                disabled={edit.readOnly}
                value={kind}
                data={Object.entries(texts.breakers).map(([value, label]) => ({ value, label }))}
                onChange={(event) => {
                  const chosen = event.currentTarget.value as keyof typeof texts.breakers
                  const made: Breaker = chosen === 'pieces' ? { pieces: game.goals.map(({ id }) => id) } : chosen
                  edit.set([...place, index], made)
                }}
              />
              {!edit.readOnly && (
                <>
                  <Button
                    size="compact-md"
                    variant="default"
                    disabled={index === 0}
                    aria-label={all.members.up(name)}
                    onClick={() => put(breakers.toSpliced(index - 1, 2, breaker, breakers[index - 1]!))}
                  >
                    {all.members.short.up}
                  </Button>
                  <Button
                    size="compact-md"
                    variant="subtle"
                    aria-label={all.members.remove(name)}
                    onClick={() => put(breakers.toSpliced(index, 1))}
                  >
                    {all.members.short.remove}
                  </Button>
                </>
              )}
            </div>
            {kind === 'pieces' && (
              <Choices place={[...place, index, 'pieces']} label={all.bonuses.goals} of={game.goals} />
            )}
          </div>
        )
      })}
      {!edit.readOnly && (
        <div>
          <Button variant="default" disabled={breakers.length >= 10} onClick={() => put([...breakers, next])}>
            {texts.add}
          </Button>
        </div>
      )}
      <p className="soft small">{texts.last}</p>
    </section>
  )
}
