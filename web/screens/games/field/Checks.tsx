import type { Game } from '../../../../src/model/documents/types.ts'
import type { Problem } from '../../../../src/model/errors.ts'
import { words } from '../../../words/catalogue.ts'
import { memoWords } from '../../../words/memo.tsx'
import { problemWords } from '../../../words/problems.ts'
import { isAbout, thingsOf } from './things.ts'

/** What the field lacks before anything can be scored on it; null where it lacks nothing. */
function emptyWords({ sources, goals }: Game): string | null {
  const texts = words().field.checks
  if (sources.length > 0 && goals.length > 0) return null
  return texts.empty(sources.length > 0 ? texts.goal : goals.length > 0 ? texts.source : texts.neither)
}

/** What does not fit on the field, in sentences that lead to it. */
export const Checks = memoWords(function Checks(props: {
  game: Game
  problems: readonly Problem[]
  looking: boolean
  onShow(key: string): void
}) {
  const { game, problems } = props
  const texts = words().field.checks
  const things = thingsOf(game)
  return (
    <section className="stack" aria-labelledby="checks-title">
      <h3 id="checks-title">{texts.title}</h3>
      <div role="status" className="stack" style={{ gap: '0.35rem' }}>
        {problems.length === 0 ? (
          <p>{props.looking ? texts.looking : (emptyWords(game) ?? texts.fine)}</p>
        ) : (
          <p className="loss">{texts.found(problems.length)}</p>
        )}
      </div>
      <ul className="facts">
        {problems.slice(0, 12).map((problem) => {
          const thing = things.find((candidate) => isAbout(candidate, problem.path))
          return (
            <li key={`${problem.path.join('/')} ${problem.message}`}>
              {problemWords(problem)}{' '}
              {thing && (
                <button type="button" className="opens" onClick={() => props.onShow(thing.key)}>
                  {texts.show}
                </button>
              )}
            </li>
          )
        })}
      </ul>
    </section>
  )
})
