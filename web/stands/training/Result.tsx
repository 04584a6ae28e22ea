import type { Game } from '../../../src/model/documents/types.ts'
import type { Happening } from '../../../src/model/scouting/types.ts'
import type { About, Tap } from '../record/draft.ts'
import { tapName } from '../record/names.ts'
import { number, useWords } from '../words/catalogue.ts'
import { type Compared, compare, compareCounts, within } from './compare.ts'

/** What was found, missed and too many, by kind, and how late the taps came. */
export function Result(props: {
  game: Game
  mode: About['mode']
  truth: readonly Happening[]
  taps: readonly Tap[]
  until: number
}) {
  const words = useWords()
  const texts = words.training
  const { game, truth, taps, until } = props
  const counts = props.mode === 'counts'
  const rows = counts ? compareCounts(truth, taps, { until, clock: game.clock }) : compare(truth, taps, until)
  const name = (row: Compared) =>
    [row.period && words.running[row.period], tapName(game, row)].filter(Boolean).join(' · ')
  const sum = (of: 'happened' | 'found' | 'extra') => rows.reduce((all, row) => all + row[of], 0)
  const [happened, found, extra] = [sum('happened'), sum('found'), sum('extra')]
  return (
    <section aria-label={texts.result}>
      <p className="big">{texts.summary(found, happened, extra)}</p>
      {found === happened && extra === 0 && <p>{texts.perfect}</p>}
      <table className="compared">
        <thead>
          <tr>
            {[texts.what, texts.truth, texts.found, texts.missed, texts.extra, ...(counts ? [] : [texts.late])].map(
              (head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ),
            )}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={name(row)}>
              <th scope="row">{name(row)}</th>
              <td>{row.happened}</td>
              <td>{row.found}</td>
              <td>{row.happened - row.found}</td>
              <td>{row.extra}</td>
              {!counts && <td>{row.late === null ? '–' : texts.lateBy(number(row.late, 1))}</td>}
            </tr>
          ))}
        </tbody>
      </table>
      <p className="soft small">{counts ? texts.counted : texts.within(within)}</p>
    </section>
  )
}
