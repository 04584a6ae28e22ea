import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import type { Game } from '../../../../src/model/documents/types.ts'
import { useList, useStored } from '../../../data/documents.ts'
import { withValueAt } from '../../../data/place.ts'
import { CameAbout } from '../../../shell/CameAbout.tsx'
import { EditProvider } from '../../../shell/fields/EditContext.tsx'
import { NumberField } from '../../../shell/fields/NumberField.tsx'
import { useTexts } from '../../../shell/fields/useTexts.ts'
import { useUnits } from '../../../units/system.ts'
import { sayDistance } from '../../../units/write.ts'
import { words } from '../../../words/catalogue.ts'
import { seconds } from '../../../words/format.ts'
import { memoWords } from '../../../words/memo.tsx'
import { explainRoute } from './explainRoute.ts'
import { thingName } from './names.ts'
import { spotsOf, startsOf } from './things.ts'
import type { DrivingRobot, useRoute } from './useAsked.ts'

export const commonRobot: DrivingRobot = {
  footprint: { length: 0.85, width: 0.85 },
  drive: { topSpeed: 3.5, acceleration: 3, deceleration: 4, pace: { kind: 'fixed', seconds: 1 } },
}

/** The robot that routes and checks are for: typed here, or that of a stored design. */
export function useDrivingRobot() {
  const [typed, setTyped] = useState(commonRobot)
  const [design, setDesign] = useState('')
  const stored = useStored('design', design === '' ? null : design)
  const robot = design !== '' && stored.data ? stored.data.body.robot : typed
  const texts = words().field.route
  const source =
    design !== '' && stored.data ? texts.design(stored.data.body.robot.name, stored.data.revision) : texts.typedRobot
  return { robot, typed, setTyped, design, setDesign, source }
}

export const RobotPanel = memoWords(function RobotPanel(props: ReturnType<typeof useDrivingRobot>) {
  const { typed, setTyped, design, setDesign, robot } = props
  const designs = useList('design')
  const { texts: unread, setText } = useTexts()
  const texts = words().field.robot
  const edit = {
    document: design === '' ? typed : robot,
    set: (place: readonly (string | number)[], value: unknown) => setTyped((now) => withValueAt(now, place, value)),
    pause: () => {},
    problems: [],
    texts: unread,
    setText,
    readOnly: design !== '',
  }
  return (
    <fieldset className="stack">
      <legend>{texts.title}</legend>
      <p className="soft small">{texts.help}</p>
      <NativeSelect
        label={texts.from}
        value={design}
        data={[
          { value: '', label: texts.typed },
          ...(designs.data ?? []).map(({ id, name }) => ({ value: id, label: name })),
        ]}
        onChange={(event) => setDesign(event.currentTarget.value)}
      />
      <EditProvider value={edit}>
        <div className="form-grid">
          <NumberField
            place={['footprint', 'length']}
            label={texts.length}
            quantity="length"
            above={0}
            max={3}
            step={0.01}
          />
          <NumberField
            place={['footprint', 'width']}
            label={texts.width}
            quantity="length"
            above={0}
            max={3}
            step={0.01}
          />
          <NumberField place={['drive', 'topSpeed']} label={texts.topSpeed} quantity="speed" min={0.01} max={12} />
          <NumberField
            place={['drive', 'acceleration']}
            label={texts.acceleration}
            quantity="acceleration"
            min={0.01}
            max={30}
          />
          <NumberField
            place={['drive', 'deceleration']}
            label={texts.braking}
            quantity="acceleration"
            min={0.01}
            max={30}
          />
        </div>
      </EditProvider>
    </fieldset>
  )
})

/** Two points, and the way between them with its length and time. */
export const RoutePanel = memoWords(function RoutePanel(props: {
  game: Game
  from: string
  to: string
  onChange(from: string, to: string): void
  found: ReturnType<typeof useRoute>
  robot: DrivingRobot
  /** What game and robot are. */
  source: string
}) {
  const { game, from, to, onChange, found } = props
  const system = useUnits()
  const texts = words().field.route
  const things = [...startsOf(game), ...spotsOf(game)]
  const points = [
    { value: '', label: words().field.tools.nobody },
    ...things.map((thing) => ({ value: thing.id, label: thingName(thing) })),
  ]
  const { route, error } = found
  const [start, end] = [from, to].map((wanted) => things.find(({ id }) => id === wanted))
  return (
    <fieldset className="stack">
      <legend>{texts.title}</legend>
      <div className="form-grid">
        <NativeSelect
          label={texts.from}
          value={from}
          data={points}
          onChange={(event) => onChange(event.currentTarget.value, to)}
        />
        <NativeSelect
          label={texts.to}
          value={to}
          data={points}
          onChange={(event) => onChange(from, event.currentTarget.value)}
        />
      </div>
      <p role="status" data-testid="route" className={error ? 'loss' : undefined}>
        {from === '' || to === '' || from === to
          ? texts.none
          : (error ??
            (route && start && end ? (
              <CameAbout
                explain={() =>
                  explainRoute(route, { game, robot: props.robot, from: start, to: end, system, source: props.source })
                }
              >
                {texts.found(sayDistance(route.length, system), seconds(route.seconds))}
              </CameAbout>
            ) : (
              texts.computing
            )))}
      </p>
      <div className="row">
        <Button size="compact-md" variant="default" disabled={!from || !to} onClick={() => onChange(to, from)}>
          {texts.swap}
        </Button>
      </div>
      {route && <p className="soft small">{texts.pace}</p>}
    </fieldset>
  )
})
