import { useMemo } from 'react'
import { Link } from 'wouter'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { words } from '../../words/catalogue.ts'
import { useModel } from '../../worker/useModel.ts'
import { costWords } from '../designs/air/airWords.ts'

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
}

function AirNote(props: Noted & { option: Option }) {
  const { game, option, ready } = props
  const asked = useModel(
    'airPlan',
    useMemo(() => (ready ? { game, option } : null), [game, option, ready]),
  )
  const said = asked.data && costWords(asked.data)
  return said ? <AirSentence option={option} said={said} /> : null
}

/** What stored air does to an option, with the way to its numbers. */
export function AirSentence({ option, said }: { option: Option; said: string }) {
  const texts = words().air.note
  return (
    <p data-testid={`air-${option.id}`}>
      {texts.ofOption(option.name, said)}{' '}
      <Link className="no-print" href={`/designs/${option.robot.id}#air-title`}>
        {texts.see}
      </Link>
    </p>
  )
}
