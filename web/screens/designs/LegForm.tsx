import { Button } from '@mantine/core'
import type { Game, Robot, Stage } from '../../../src/model/documents/types.ts'
import type { Place } from '../../data/difference.ts'
import { DurationFields } from '../../shell/fields/DurationFields.tsx'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { SelectField } from '../../shell/fields/SelectField.tsx'
import { placeName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import { type ShownLeg, tripOf } from './cycle.ts'
import type { Selected } from './DesignEditor.tsx'
import { freeStageId } from './network.ts'
import { SplitTrip } from './SplitTrip.tsx'
import { StageForm } from './StageForm.tsx'

/** Under the strip: the numbers of the bar that was chosen, and of its leg. */
export function LegForm(props: {
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
  return (
    <div className="stage-form stack">
      <h3>{leg.name}</h3>
      <LegNumbers game={game} leg={leg} place={place} retry={'retry' in trip && trip.retry !== null} />
      {'whole' in trip ? (
        <>
          <DurationFields place={[...place, 'whole']} label={texts.leg.whole} />
          <SplitTrip place={place} trip={trip} game={game} robot={robot} request={leg.request} />
        </>
      ) : (
        <>
          {selected?.leg === leg.id && selected.stage === 'drive' ? (
            <DriveNumbers />
          ) : (
            <StageForm trip={trip.stages} selected={selected?.leg === leg.id ? selected.stage : null} place={place} />
          )}
          <AddStage stages={trip.stages} place={place} onAdded={(stage) => props.onSelect({ leg: leg.id, stage })} />
        </>
      )}
    </div>
  )
}

function LegNumbers(props: { game: Game; leg: ShownLeg; place: Place; retry: boolean }) {
  const { game, leg, place } = props
  const texts = words().designs.leg
  const edit = useEdit()
  const { request } = leg
  return (
    <div className="form-grid">
      <NumberField place={[...place, 'success']} label={texts[request.kind]} percent min={0} max={1} step={1} />
      {request.kind === 'finish' && (
        <SelectField
          place={[...place, 'otherwise']}
          label={texts.fails}
          choices={[
            { value: null, label: texts.nothing },
            ...game.finishes
              .filter(({ id }) => id !== request.finish)
              .map(({ id }) => ({ value: id, label: texts.still(placeName(game, id)) })),
          ]}
        />
      )}
      {request.kind === 'collect' && !props.retry && !edit.readOnly && (
        <div>
          <Button
            variant="default"
            size="compact-md"
            onClick={() => edit.set([...place, 'retry'], { kind: 'range', low: 0.5, likely: 1, high: 2 })}
          >
            {texts.addRetry}
          </Button>
        </div>
      )}
      {request.kind === 'collect' && props.retry && (
        <div style={{ gridColumn: '1 / -1' }}>
          <DurationFields place={[...place, 'retry']} label={texts.retry} />
        </div>
      )}
    </div>
  )
}

export function DriveNumbers() {
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
      <DurationFields place={[...drive, 'pace']} label={texts.pace} factor />
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
          const id = freeStageId(props.stages)
          const last = props.stages.at(-1)?.id ?? 'drive'
          const stage: Stage = {
            id,
            name: words().designs.stage.fresh,
            duration: { kind: 'range', low: 0.3, likely: 0.5, high: 1 },
            after: [last],
          }
          edit.set([...props.place, 'stages'], [...props.stages, stage])
          props.onAdded(id)
        }}
      >
        {words().designs.stage.add}
      </Button>
    </div>
  )
}
