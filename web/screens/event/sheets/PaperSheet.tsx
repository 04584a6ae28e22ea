import type { Game } from '../../../../src/model/documents/types.ts'
import type { Alliance, Match, Seat } from '../../../../src/model/scouting/types.ts'
import { words } from '../../../words/catalogue.ts'
import { matchName } from '../matchNames.ts'
import { fieldName } from './fieldName.ts'
import { type SheetField, sheetFields } from './fields.ts'

/** One page: the three robots of an alliance in a match. Numbers of boxes are those of the keying screen. */
export function PaperSheet(props: {
  event: string
  game: Game
  match: Match | null
  alliance: Alliance
  seats: readonly Seat[]
}) {
  const { match, alliance, game } = props
  const texts = words().sheets.paper
  const fields = sheetFields(game)
  return (
    <article className="paper-sheet" aria-label={texts.page(match ? matchName(match) : '', texts.alliances[alliance])}>
      <header>
        <strong>{match ? matchName(match) : texts.matchBlank}</strong>
        <span>{texts.alliances[alliance]}</span>
        <span className="soft">{props.event}</span>
      </header>
      {props.seats.map((seat) => (
        <Robot key={seat.position} {...props} seat={seat} fields={fields} />
      ))}
      <footer className="small">
        {texts.how} {game.finishes.map(({ name }, index) => texts.finish(index + 1, name)).join(' · ')}
      </footer>
    </article>
  )
}

function Robot(props: { match: Match | null; seat: Seat; fields: readonly SheetField[] }) {
  const { match, seat, fields } = props
  const texts = words().sheets.paper
  const side = match?.[seat.alliance]
  const team = (side?.find(({ position }) => position === seat.position) ?? side?.[seat.position - 1])?.team
  // Places are numbered from 1 to 6 over both alliances, so that one digit says which robot it was.
  const place = seat.position + (seat.alliance === 'blue' ? 3 : 0)
  return (
    <section className="paper-robot">
      <h2>
        {texts.robot(place)} {team ?? '________'} <span className="paper-scout">{texts.scout}</span>
      </h2>
      <ol>
        {fields.map((field, index) => (
          <li key={field.key} className={field.kind === 'note' ? 'paper-note' : undefined}>
            <span className="key-number">{index + 1}</span>
            <span>{fieldName(field)}</span>
            <span className={field.kind === 'count' ? 'paper-box paper-tally' : 'paper-box'} />
          </li>
        ))}
      </ol>
    </section>
  )
}
