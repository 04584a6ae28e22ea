import { Button } from '@mantine/core'
import { memo, useEffect, useState } from 'react'
import type { Game, Robot } from '../../../../src/model/documents/types.ts'
import { Cautions } from '../../../shell/Cautions.tsx'
import { forgetTexts, useEdit } from '../../../shell/fields/EditContext.tsx'
import { Fold } from '../../../shell/parts/Fold.tsx'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { firstPart } from '../../parts/firstPart.ts'
import { ofKind, useShelf } from '../../timings/useShelf.ts'
import { AirAnswer } from './AirAnswer.tsx'
import { AirForm } from './AirForm.tsx'
import { AirUses } from './AirUses.tsx'
import { freshAir } from './freshAir.ts'
import type { AirAsked } from './useAirPlan.ts'
import './air.css'

const place = ['robot', 'air']

/** The robot's stored air: what it does in a match, its form, and its cautions; or that there is none, and a way to add it. */
export const AirPanel = memo(function AirPanel(props: { game: Game; robot: Robot; asked: AirAsked; source: string }) {
  const { game, robot, asked } = props
  const { air } = robot
  const edit = useEdit()
  const texts = words().air
  const [removed, setRemoved] = useState(false)
  const [added, setAdded] = useState(false)
  // The address may name this panel, which is drawn only now.
  useEffect(() => {
    if (location.hash === '#air-title') document.getElementById('air-title')?.scrollIntoView()
  }, [])
  if (!air) return <NoAir robot={robot} removed={removed} onAdd={() => setAdded(true)} />
  const wrong = edit.problems.some(({ path }) => path[0] === 'robot' && path[1] === 'air')
  const remove = () => {
    forgetTexts(edit, place)
    edit.set(place, undefined)
    setRemoved(true)
  }
  return (
    <section className="sheet stack" aria-labelledby="air-title">
      <h2 id="air-title">{texts.title}</h2>
      <Answered game={game} robot={robot} asked={asked} source={props.source} />
      <Fold id="air-supply" title={texts.form.supply} level={3} open={added || wrong}>
        <AirForm air={air} />
      </Fold>
      <Fold id="air-uses" title={texts.uses.title} level={3} open={added || wrong}>
        <AirUses game={game} robot={robot} air={air} />
      </Fold>
      {!edit.readOnly && (
        <div className="no-print">
          <Button variant="subtle" onClick={remove}>
            {texts.remove}
          </Button>
        </div>
      )}
      <Cautions which={['air']} of={words().air.title} />
    </section>
  )
})

function NoAir(props: { robot: Robot; removed: boolean; onAdd: () => void }) {
  const edit = useEdit()
  const texts = words().air
  const { parts } = useShelf()
  const add = () => {
    const tank =
      ofKind(parts, 'tank')[0] ?? firstPart('tank', { id: 'tank', name: words().parts.kinds.tank, date: today() })
    edit.set(place, freshAir(props.robot, tank))
    props.onAdd()
  }
  return (
    <section className="sheet stack" aria-labelledby="air-title">
      <Fold id="air-title" title={texts.none} open={props.removed}>
        {props.removed && <p role="status">{texts.removed}</p>}
        <p className="soft">{texts.noneHelp}</p>
        {!edit.readOnly && (
          <div>
            <Button variant="default" onClick={add}>
              {texts.add}
            </Button>
          </div>
        )}
      </Fold>
    </section>
  )
}

const today = (): string => new Date().toISOString().slice(0, 10)

/** The newest answer, marked where it is that of before the last edit. */
function Answered(props: { game: Game; robot: Robot; asked: AirAsked; source: string }) {
  const { game, robot, asked } = props
  const texts = words().air.answer
  const { answer, of, error, again, waits } = asked
  if (error) return <Trouble title={texts.trouble} error={error} retry={again} />
  if (!answer) return waits ? <p className="soft">{texts.waits}</p> : <Loading what={texts.label} />
  const old = of !== robot
  return (
    <div className="stack" style={old ? { opacity: 0.55 } : undefined}>
      <p role="status" className={old ? 'soft small' : 'visually-hidden'}>
        {old ? (waits ? texts.waits : texts.outdated) : ''}
      </p>
      <AirAnswer game={game} robot={of ?? robot} answer={answer} source={props.source} />
    </div>
  )
}
