import { useMemo } from 'react'
import { Link } from 'wouter'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { words } from '../../words/catalogue.ts'
import { useModel } from '../../worker/useModel.ts'
import { costWords, lossWords } from '../designs/air/airWords.ts'

/**
 * Options whose robot's stored air runs out, with what that costs: the plan that the comparison is made of takes it that air
 * always lasts. `ready`: the comparison is there, so that this does not hold it up.
 */
export function AirNotes(props: Noted & { options: readonly Option[] }) {
  const stored = props.options.filter(({ robot }) => robot.air)
  return stored.map((option) => <AirNote key={option.id} {...props} option={option} />)
}

interface Noted {
  game: Game
  ready: boolean
  /** In a record also when the pressure is lost, because nothing else there says it. */
  record?: boolean
}

function AirNote(props: Noted & { option: Option }) {
  const { game, option, ready, record = false } = props
  const asked = useModel(
    'airPlan',
    useMemo(() => (ready ? { game, option } : null), [game, option, ready]),
  )
  const texts = words().air.note
  const { data } = asked
  const said = data && (record ? lossWords(data, game.clock.teleop) : costWords(data))
  if (!said) return null
  return (
    <p data-testid={`air-${option.id}`}>
      {texts.ofOption(option.name, said)}{' '}
      <Link className="no-print" href={`/designs/${option.robot.id}#air-title`}>
        {texts.see}
      </Link>
    </p>
  )
}
