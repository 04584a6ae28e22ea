import type { PlayedBracket, Tie } from '../../../../src/model/picks/playoffs/index.ts'
import { words } from '../../../words/catalogue.ts'

/** All ties in the order in which they can be played: who meets, and how it stands. */
export function Bracket(props: { ties: readonly Tie[]; played: PlayedBracket; own: number | null }) {
  const { ties, played, own } = props
  const texts = words().playoffs
  const side = (tie: Tie, k: 0 | 1, number: number | null): string => {
    if (number !== null) return number === own ? texts.oursNumbered(number) : texts.numbered(number)
    const from = tie.from[k]
    return from.kind === 'alliance' ? texts.numbered(from.number) : texts.from[from.kind](from.tie + 1)
  }
  return (
    <section className="sheet stack" aria-labelledby="bracket">
      <h2 id="bracket">{texts.bracket}</h2>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.bracketTable}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col" className="figure">
                {texts.tie}
              </th>
              <th scope="col">{texts.part}</th>
              <th scope="col">{texts.meet}</th>
              <th scope="col">{texts.stands}</th>
            </tr>
          </thead>
          <tbody>
            {ties.map((tie, k) => {
              const { meets, winner } = played.ties[k]!
              const won = meets.map((number) => (number === null ? 0 : (played.standing[k]?.[number] ?? 0)))
              return (
                <tr key={JSON.stringify([tie.part, tie.round, tie.from])}>
                  <td className="figure">{k + 1}</td>
                  <th scope="row">{texts.parts[tie.part](tie.round, tie.games)}</th>
                  <td>{texts.against(side(tie, 0, meets[0]), side(tie, 1, meets[1]))}</td>
                  <td>{winner !== null ? texts.won(winner) : won.some((n) => n > 0) ? won.join(' : ') : texts.open}</td>
                </tr>
              )
            })}
          </tbody>
        </table>
      </div>
      {played.apart.length > 0 && <p>{texts.apart(played.apart.length)}</p>}
    </section>
  )
}
