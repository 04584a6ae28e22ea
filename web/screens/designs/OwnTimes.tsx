import { Button } from '@mantine/core'
import type { Drive, Game, Robot } from '../../../src/model/documents/types.ts'
import { travel } from '../../../src/model/field/index.ts'
import type { Place } from '../../data/difference.ts'
import { forgetTexts, useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { SelectField } from '../../shell/fields/SelectField.tsx'
import { endChoices, spotName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'

type OwnTime = NonNullable<Drive['times']>[number]

const place: Place = ['robot', 'drive', 'times']

/** Drives whose time somebody knows better than the model, one below the other. */
export function OwnTimes({ game, robot }: { game: Game; robot: Robot }) {
  const edit = useEdit()
  const texts = words().designs.leg.times
  const times = robot.drive.times ?? []
  const ends = endChoices(game)
  const put = (next: OwnTime[]) => {
    forgetTexts(edit, place)
    edit.set(place, next.length > 0 ? next : undefined)
  }
  const free = freeEnds(game, robot)
  if (edit.readOnly && times.length === 0) return null
  return (
    <fieldset className="stack">
      <legend>{texts.title}</legend>
      <p className="soft small">{texts.help}</p>
      {times.map(({ from, to }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a time has nothing of its own but its place
        <div key={index} className="form-grid">
          <SelectField place={[...place, index, 'from']} label={texts.from} choices={ends} />
          <SelectField place={[...place, index, 'to']} label={texts.to} choices={ends} />
          <NumberField place={[...place, index, 'seconds']} label={texts.time} unit="s" min={0.01} max={600} />
          {!edit.readOnly && (
            <div>
              <Button
                size="compact-md"
                variant="subtle"
                aria-label={texts.remove(spotName(game, from), spotName(game, to))}
                onClick={() => put(times.toSpliced(index, 1))}
              >
                {texts.short}
              </Button>
            </div>
          )}
        </div>
      ))}
      {!edit.readOnly && (
        <div>
          <Button
            size="compact-md"
            variant="default"
            disabled={!free || times.length >= 200}
            onClick={() => free && put([...times, fresh(game, robot, free)])}
          >
            {texts.add}
          </Button>
        </div>
      )}
    </fieldset>
  )
}

/** A drive from a source to a goal that has no own time yet; null where there is none. */
function freeEnds(game: Game, robot: Robot): { from: string; to: string } | null {
  const told = (robot.drive.times ?? []).map(({ from, to }) => [from, to])
  const ids = (places: Game['sources'] | Game['goals']) => places.flatMap(({ spots }) => spots.map(({ id }) => id))
  for (const from of ids(game.sources))
    for (const to of ids(game.goals))
      if (!told.some((one) => one.includes(from) && one.includes(to))) return { from, to }
  return null
}

/** Begins with what is computed, to 0.01 s. A drive that the field does not allow is said so elsewhere, and begins with 1 s. */
function fresh(game: Game, robot: Robot, { from, to }: { from: string; to: string }): OwnTime {
  try {
    return { from, to, seconds: Math.max(0.01, Math.round(100 * travel(game, robot, from, to).seconds) / 100) }
  } catch {
    return { from, to, seconds: 1 }
  }
}
