import type { Game } from '../../../src/model/documents/types.ts'
import { type Clash, clashesOf } from '../../../src/model/match/clashes.ts'
import { sayDistance } from '../../units/write.ts'
import { words } from '../../words/catalogue.ts'
import { listed, seconds } from '../../words/format.ts'
import type { Lineup } from '../../worker/protocol.ts'
import { robotName } from './names.ts'

/** Partners that get in each other's way in autonomous, beside the line-up; nothing where none do. */
export function Clashes(props: { game: Game; lineup: Lineup }) {
  const { game, lineup } = props
  const text = words().match.clashes
  const told = (['ours', 'theirs'] as const).flatMap((side) =>
    clashesOf(game, lineup[side]).map((clash) => sentenceOf(game, lineup, { clash, first: side === 'ours' ? 0 : 3 })),
  )
  if (told.length === 0) return null
  return (
    <section className="sheet stack" aria-labelledby="match-clashes">
      <h2 id="match-clashes">{text.title}</h2>
      <div role="status">
        <ul className="loss">
          {told.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </div>
      <p className="soft small">{text.help}</p>
    </section>
  )
}

function sentenceOf(game: Game, lineup: Lineup, { clash, first }: { clash: Clash; first: number }): string {
  const text = words().match.clashes
  const who = listed(clash.partners.map((position) => robotName(lineup, first + position)))
  if (clash.kind === 'pieces') {
    const { name } = game.sources.find(({ id }) => id === clash.source)!
    return text.pieces(who, name, String(clash.wanted), String(clash.stock))
  }
  const [distance, touching] = [sayDistance(clash.distance), sayDistance(clash.touching)]
  if (clash.kind === 'path') return text.path(who, seconds(clash.at), distance, touching)
  return text[clash.kind](who, distance, touching)
}
