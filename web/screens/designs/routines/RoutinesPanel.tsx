import { Button } from '@mantine/core'
import { memo, useState } from 'react'
import type { Auto, Game, Option, Robot } from '../../../../src/model/documents/types.ts'
import type { Stored } from '../../../data/documents.ts'
import { useEdit } from '../../../shell/fields/EditContext.tsx'
import { words } from '../../../words/catalogue.ts'
import { joined } from '../../../words/decimal.ts'
import { freeId } from '../../games/field/fill.ts'
import { Members } from '../../games/forms/Members.tsx'
import { RoutineFields } from './RoutineFields.tsx'

const place = ['robot', 'autos']

/** The routines of autonomous, each as a form with its path on the field and what it is expected to bring. */
export const RoutinesPanel = memo(function RoutinesPanel(props: {
  game: Game
  robot: Robot
  /** The way to play that is shown: what a piece on a goal that pays for holding is worth is said there. */
  option: Option
  ways: readonly Stored<'option'>[]
  source: string
}) {
  const { game, robot, ways } = props
  const edit = useEdit()
  const texts = words().routines
  const [said, setSaid] = useState<string | null>(null)
  const { autos } = robot
  const ids = new Set(autos.map(({ id }) => id))
  const add = (auto: Auto) => edit.set(place, [...autos, auto])
  const remove = (auto: Auto) => {
    edit.set(
      place,
      autos.filter((one) => one !== auto),
    )
    const users = ways
      .filter(({ body }) => body.option.auto === auto.id)
      .map(({ name }) => words().actions.quoted(name))
    setSaid(users.length > 0 ? texts.removedFrom(auto.name, joined(users)) : texts.removed(auto.name))
  }
  return (
    <section className="sheet stack" aria-labelledby="routines-title">
      <h2 id="routines-title">{texts.title}</h2>
      <p className="soft small">{texts.help}</p>
      <p role="status" className={said ? undefined : 'visually-hidden'}>
        {said}
      </p>
      <Members
        place={place}
        items={autos}
        one={texts.one}
        addLabel={texts.add}
        most={30}
        onAdd={() => add(firstRoutine(game, robot, freeId(ids, 'routine-'), texts.fresh(autos.length + 1)))}
        onRemove={remove}
      >
        {(auto, index) => (
          <>
            <RoutineFields {...props} auto={auto} place={[...place, index]} />
            {!edit.readOnly && (
              <div>
                <Button
                  size="compact-md"
                  variant="default"
                  onClick={() => add({ ...auto, id: freeId(ids, 'routine-'), name: texts.fresh(autos.length + 1) })}
                >
                  {texts.copy}
                </Button>
              </div>
            )}
          </>
        )}
      </Members>
    </section>
  )
})

/** A routine that only moves off its start. */
const firstRoutine = (game: Game, robot: Robot, id: string, name: string): Auto => {
  const start = game.starts[0]?.id ?? ''
  return { id, name, starts: [start], steps: [], leaves: 0.95, endsAt: start, holding: robot.preload }
}
