import { Button } from '@mantine/core'
import { memo } from 'react'
import type { CollectTrip, Game, Robot, ScoreEntry, Stage, Trip } from '../../../src/model/documents/types.ts'
import type { Place } from '../../data/difference.ts'
import { DurationFields } from '../../shell/fields/DurationFields.tsx'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { words } from '../../words/catalogue.ts'
import { Hardware } from '../timings/Hardware.tsx'
import { type ShownLeg, tripOf } from './cycle.ts'
import type { Selected } from './DesignEditor.tsx'
import { EntrySpots } from './EntrySpots.tsx'
import { freshStage } from './network.ts'
import { OwnTimes } from './OwnTimes.tsx'
import { SplitTrip } from './SplitTrip.tsx'
import { StageForm } from './StageForm.tsx'
import { TimedBy, timedLeg } from './stopwatch/TimedBy.tsx'
import { FailsTo, Retry } from './TripNumbers.tsx'

/** Under the strip: the numbers of the bar that was chosen, and of its leg. */
export const LegForm = memo(function LegForm(props: {
  design: string
  game: Game
  robot: Robot
  legs: ShownLeg[]
  selected: Selected | null
  onSelect(selected: Selected): void
}) {
  const { game, robot, legs, selected } = props
  const texts = words().designs
  const leg = legs.find(({ id }) => id === selected?.leg) ?? legs[0]
  const trip = leg && tripOf(robot, leg)
  if (!leg || !trip) return null
  const place: Place = ['robot', ...leg.trip]
  const onAdded = (stage: string) => props.onSelect({ leg: leg.id, stage })
  return (
    <div className="stage-form stack">
      <h3>{leg.name}</h3>
      <LegNumbers game={game} leg={leg} place={place} trip={trip} />
      {'whole' in trip ? (
        <>
          <DurationFields place={[...place, 'whole']} label={texts.leg.whole} />
          <TimedBy
            design={props.design}
            leg={timedLeg(leg.request)}
            part={{ kind: 'whole' }}
            place={[...place, 'whole']}
          />
          <SplitTrip place={place} trip={trip} game={game} robot={robot} request={leg.request} />
        </>
      ) : (
        <>
          {selected?.leg === leg.id && selected.stage === 'drive' ? (
            <DriveNumbers game={game} robot={robot} />
          ) : (
            <StageForm
              trip={trip.stages}
              selected={selected?.leg === leg.id ? selected.stage : null}
              place={place}
              onAdded={onAdded}
              timed={(stage, at) => (
                <TimedBy design={props.design} leg={timedLeg(leg.request)} part={{ kind: 'stage', stage }} place={at} />
              )}
            />
          )}
          <AddStage stages={trip.stages} place={place} onAdded={onAdded} />
        </>
      )}
    </div>
  )
})

function LegNumbers(props: { game: Game; leg: ShownLeg; place: Place; trip: Trip }) {
  const { game, leg, place, trip } = props
  const texts = words().designs.leg
  const { request } = leg
  return (
    <>
      <div className="form-grid">
        <NumberField place={[...place, 'success']} label={texts[request.kind]} percent min={0} max={1} step={1} />
        {request.kind === 'finish' && <FailsTo game={game} finish={request.finish} place={place} />}
      </div>
      {request.kind === 'collect' && <Retry place={place} trip={trip as CollectTrip} />}
      {request.kind === 'score' && (
        <EntrySpots game={game} goal={request.goal} entry={trip as ScoreEntry} place={place} />
      )}
    </>
  )
}

const driveAt: Place = ['drive']

export function DriveNumbers({ game, robot }: { game: Game; robot: Robot }) {
  const drive: Place = ['robot', 'drive']
  const texts = words().designs.leg
  return (
    <div className="stack">
      <h4 style={{ margin: 0 }}>{texts.drive}</h4>
      <div className="form-grid">
        <NumberField place={[...drive, 'topSpeed']} label={texts.topSpeed} quantity="speed" above={0} max={12} />
        <NumberField
          place={[...drive, 'acceleration']}
          label={texts.acceleration}
          quantity="acceleration"
          above={0}
          max={30}
        />
        <NumberField
          place={[...drive, 'deceleration']}
          label={texts.braking}
          quantity="acceleration"
          above={0}
          max={30}
        />
      </div>
      <Hardware at={driveAt} />
      <DurationFields place={[...drive, 'pace']} label={texts.pace} factor />
      <OwnTimes game={game} robot={robot} />
    </div>
  )
}

function AddStage(props: { stages: Stage[]; place: Place; onAdded(stage: string): void }) {
  const edit = useEdit()
  if (edit.readOnly) return null
  return (
    <div>
      <Button
        variant="default"
        onClick={() => {
          const last = props.stages.at(-1)?.id ?? 'drive'
          const stage: Stage = { ...freshStage(props.stages, words().designs.stage.fresh), after: [last] }
          edit.set([...props.place, 'stages'], [...props.stages, stage])
          props.onAdded(stage.id)
        }}
      >
        {words().designs.stage.add}
      </Button>
    </div>
  )
}
