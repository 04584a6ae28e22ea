import { Button, Checkbox } from '@mantine/core'
import { memo, useState } from 'react'
import type { Game, Robot, Trip } from '../../../src/model/documents/types.ts'
import { mean } from '../../../src/model/duration/index.ts'
import type { Place } from '../../data/difference.ts'
import { forgetTexts, useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { words } from '../../words/catalogue.ts'
import { seconds } from '../../words/format.ts'
import { EntrySpots } from './EntrySpots.tsx'
import { collecting, finishing, firstScore, scoring } from './firstTrips.ts'
import { FailsTo, Retry } from './TripNumbers.tsx'

/** Everything that the robot can do, place by place, drawn when it is opened. */
export const CanForm = memo(function CanForm(props: { game: Game; robot: Robot }) {
  const [open, setOpen] = useState(false)
  return (
    <details className="fold" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{words().designs.can.title}</summary>
      {open && <Places {...props} />}
    </details>
  )
})

function Places({ game, robot }: { game: Game; robot: Robot }) {
  const edit = useEdit()
  const texts = words().designs.can
  const put = (next: Robot, changed: Place) => {
    forgetTexts(edit, changed)
    edit.set(['robot'], next)
  }
  return (
    <div className="stack" style={{ paddingTop: '0.75rem' }}>
      <p className="soft small">{texts.help}</p>
      <h3>{texts.collect}</h3>
      {game.sources.map(({ id, name }) => {
        const trip = robot.collect[id]
        const place = ['robot', 'collect', id]
        return (
          <Able
            key={id}
            name={name}
            able={trip !== undefined}
            onAble={(can) => put(collecting(game, robot, id, can), place)}
          >
            {trip && (
              <>
                <TripLine trip={trip} />
                <div className="form-grid">
                  <Success place={place} label={words().designs.leg.collect} />
                </div>
                <Retry place={place} trip={trip} />
              </>
            )}
          </Able>
        )
      })}
      <h3>{texts.score}</h3>
      {game.goals.map(({ id, name }) => {
        const entries = robot.score[id] ?? []
        const place = ['robot', 'score', id]
        return (
          <Able
            key={id}
            name={name}
            able={entries.length > 0}
            onAble={(can) => put(scoring(robot, id, can ? [firstScore] : []), place)}
          >
            {entries.map((entry, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a way to score has nothing of its own but its place
              <div key={index} className="stack can-entry">
                <TripLine trip={entry} name={texts.entry(name, index + 1)} />
                <div className="form-grid">
                  <Success place={[...place, index]} label={words().designs.leg.score} />
                </div>
                <EntrySpots game={game} goal={id} entry={entry} place={[...place, index]} />
                {!edit.readOnly && entries.length > 1 && (
                  <div>
                    <Button
                      size="compact-md"
                      variant="subtle"
                      onClick={() => put(scoring(robot, id, entries.toSpliced(index, 1)), place)}
                    >
                      {texts.removeEntry(texts.entry(name, index + 1))}
                    </Button>
                  </div>
                )}
              </div>
            ))}
            {!edit.readOnly && entries.length > 0 && (
              <div>
                <Button
                  size="compact-md"
                  variant="default"
                  disabled={entries.length >= 10}
                  onClick={() => put(scoring(robot, id, [...entries, firstScore]), place)}
                >
                  {texts.addEntry(name)}
                </Button>
              </div>
            )}
          </Able>
        )
      })}
      {game.finishes.length > 0 && <h3>{texts.finish}</h3>}
      {game.finishes.map(({ id, name }) => {
        const trip = robot.finish[id]
        const place = ['robot', 'finish', id]
        return (
          <Able key={id} name={name} able={trip !== undefined} onAble={(can) => put(finishing(robot, id, can), place)}>
            {trip && (
              <>
                <TripLine trip={trip} />
                <div className="form-grid">
                  <Success place={place} label={words().designs.leg.finish} />
                  <FailsTo game={game} finish={id} place={place} />
                </div>
              </>
            )}
          </Able>
        )
      })}
    </div>
  )
}

function Able(props: { name: string; able: boolean; onAble(can: boolean): void; children: React.ReactNode }) {
  const edit = useEdit()
  return (
    <fieldset className="stack can-place">
      <Checkbox
        label={props.name}
        disabled={edit.readOnly}
        checked={props.able}
        onChange={(event) => props.onAble(event.currentTarget.checked)}
      />
      {props.able && <div className="stack can-numbers">{props.children}</div>}
    </fieldset>
  )
}

const Success = (props: { place: Place; label: string }) => (
  <NumberField place={[...props.place, 'success']} label={props.label} percent min={0} max={1} step={1} />
)

/** How the trip is said so far; its times are changed on the strip. */
function TripLine({ trip, name }: { trip: Trip; name?: string }) {
  const texts = words().designs.can
  const said =
    'whole' in trip ? `${texts.takes(seconds(mean(trip.whole)))}, ${texts.whole}` : texts.stages(trip.stages.length)
  return <p className="soft small">{name ? `${name}: ${said}` : said}</p>
}
