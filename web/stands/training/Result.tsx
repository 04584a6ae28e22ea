import type { Game } from '../../../src/model/documents/types.ts'
import type { Happening } from '../../../src/model/scouting/types.ts'
import type { Tap } from '../record/draft.ts'
import { tapName } from '../record/names.ts'
import { number, useWords } from '../words/catalogue.ts'
import { compare, within } from './compare.ts'

/** What was found, missed and too many, by kind, and how late the taps came. */
export function Result(props: { game: Game; truth: readonly Happening[]; taps: readonly Tap[]; until: number }) {
  const texts = useWords().training
  const rows = compare(props.truth, props.taps, props.until)
  const sum = (of: 'happened' | 'found' | 'extra') => rows.reduce((all, row) => all + row[of], 0)
  const [happened, found, extra] = [sum('happened'), sum('found'), sum('extra')]
  return (
    <section aria-label={texts.result}>
      <p className="big">{texts.summary(found, happened, extra)}</p>
      {found === happened && extra === 0 && <p>{texts.perfect}</p>}
      <table className="compared">
        <thead>
          <tr>
            {[texts.what, texts.truth, texts.found, texts.missed, texts.extra, texts.late].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={tapName(props.game, row)}>
              <th scope="row">{tapName(props.game, row)}</th>
              <td>{row.happened}</td>
              <td>{row.found}</td>
              <td>{row.happened - row.found}</td>
              <td>{row.extra}</td>
              <td>{row.late === null ? '–' : texts.lateBy(number(row.late, 1))}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="soft small">{texts.within(within)}</p>
    </section>
  )
}
