import { Link } from 'wouter'
import { useList } from '../../data/documents.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { OpenQuestion } from './OpenQuestion.tsx'
import { Shelves } from './Shelves.tsx'
import './start.css'

/** Newest first. */
const newest = <T extends { savedAt: string }>(list: readonly T[] | undefined): T | null =>
  [...(list ?? [])].sort((a, b) => b.savedAt.localeCompare(a.savedAt))[0] ?? null

export function StartScreen() {
  const decisions = useList('decision')
  const comparisons = useList('comparison')
  const decision = newest(decisions.data)
  return (
    <div className="stack wide">
      <div className="stack">
        <h1>What will your robot do, and what will it leave out?</h1>
        <p>
          Cyclewright turns the season’s rules, the field and a mechanism that is still a sketch into points a match:
          where the time of a scoring trip goes, what each second is worth, and what would change the answer.
        </p>
      </div>
      {decisions.isPending ? (
        <Loading what="the open question" />
      ) : decisions.error ? (
        <Trouble
          title="The open question could not be loaded"
          error={decisions.error}
          retry={() => void decisions.refetch()}
        />
      ) : decision ? (
        <OpenQuestion decision={decision} />
      ) : (
        <section className="sheet stack" aria-label="First steps">
          <h2>{comparisons.data?.length ? 'No decision yet' : 'Nothing here yet'}</h2>
          <p>
            {comparisons.data?.length
              ? 'Open a trade-off, look at what would change the answer, and write it down as a decision.'
              : 'Enter your season’s game, sketch a robot, compare two ways to play.'}
          </p>
          <div className="row">
            <Link href={comparisons.data?.length ? '/trade-offs' : '/games'}>
              {comparisons.data?.length ? 'To the trade-offs' : 'Enter your own game'}
            </Link>
          </div>
        </section>
      )}
      <Shelves />
    </div>
  )
}
