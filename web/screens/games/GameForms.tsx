import { useState } from 'react'
import type { Game } from '../../../src/model/documents/types.ts'
import { Figure } from '../../charts/Figure.tsx'
import { Later } from '../../charts/Later.tsx'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { Terms } from '../../shell/Terms.tsx'
import { units } from '../../units/quantities.ts'
import { useUnits } from '../../units/system.ts'
import { writeQuantity } from '../../units/write.ts'
import { words } from '../../words/catalogue.ts'
import { FieldEditor } from './field/FieldEditor.tsx'
import { thingName } from './field/names.ts'
import { spotsOf, startsOf } from './field/things.ts'
import type { Removed } from './forms/references.ts'
import { NotModelled } from './NotModelled.tsx'
import { PieceForms } from './PieceForms.tsx'
import { PlaceForms } from './PlaceForms.tsx'
import { RuleForms } from './RuleForms.tsx'
import { StandingForms } from './StandingForms.tsx'

/** Every rule of a game as a form, and its field. */
export function GameForms(props: { game: Game; id: string; source: string }) {
  const { game } = props
  const edit = useEdit()
  const [said, setSaid] = useState<string | null>(null)
  const removed = ({ game: next, others }: Removed, name: string) => {
    edit.set([], next)
    setSaid(words().games.members.gone(name, others.join(', ')))
  }
  return (
    <>
      <Terms of={['alliance', 'autonomousTeleopEndgame', 'goalSource', 'finish', 'spot']} />
      <FieldSheet game={game} source={props.source} />
      <p role="status" className={said ? undefined : 'visually-hidden'}>
        {said}
      </p>
      <Later>
        <RuleForms game={game} />
        <PieceForms game={game} onRemoved={removed} />
        <PlaceForms game={game} onRemoved={removed} />
        <StandingForms game={game} />
        <NotModelled game={props.id} />
      </Later>
    </>
  )
}

function FieldSheet(props: { game: Game; source: string }) {
  const { game } = props
  const edit = useEdit()
  const system = useUnits()
  const texts = words().field
  const unit = units[system].length.symbol
  const lengthCell = (value: number) => ({
    shown: writeQuantity(value, 'length', system),
    value: value / units[system].length.factor,
    unit,
  })
  const names = (places: readonly { name: string }[]): string =>
    places.length === 0 ? texts.nothing : places.map(({ name }, index) => `${index + 1} ${name}`).join(', ')
  return (
    <section className="sheet stack" aria-labelledby="field-title">
      <h2 id="field-title">{texts.title}</h2>
      <Figure
        title={texts.figure}
        hideTitle
        table={{
          head: [texts.table.place, texts.table.letter, texts.table.x(unit), texts.table.y(unit)],
          rows: [...startsOf(game), ...spotsOf(game)].map((thing) => [
            thingName(thing),
            thing.kind === 'spot' ? thing.letter : '',
            lengthCell(thing.at[0]),
            lengthCell(thing.at[1]),
          ]),
        }}
      >
        <FieldEditor game={game} source={props.source} onReplace={(next) => edit.set([], next)} />
      </Figure>
      <p className="soft small">{texts.legend(names(game.sources), names(game.goals), names(game.finishes))}</p>
    </section>
  )
}
