import { Button } from '@mantine/core'
import { mostOff } from '../../../../src/model/timing/index.ts'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'
import type { SearchRow } from './rows.ts'
import type { usePoints } from './usePoints.ts'

/** Asking for the points, how far they are, and how good the lines between them are. */
export function PointsPart(props: {
  match: ReturnType<typeof usePoints>
  rows: readonly SearchRow[]
  followers: number
}) {
  const { match, followers } = props
  const text = words().search
  if (followers === 0) return <p>{text.nothingFollows}</p>
  const count = [...match.planned.values()].reduce((sum, row) => sum + row.size, 0)
  const off = props.rows.flatMap((row) =>
    row.match.flatMap((each) => (each && Number.isFinite(each.off) ? each.off : [])),
  )
  return (
    <div className="stack">
      <div className="row">
        {match.running ? (
          <Button variant="default" onClick={match.stop}>
            {text.stop}
          </Button>
        ) : (
          !match.complete && (
            <Button variant="default" onClick={match.start}>
              {count > 0 ? text.goOn : text.compute}
            </Button>
          )
        )}
        {(match.running || count > 0) && (
          <span className="soft" role="status">
            {text.planned(count)}
          </span>
        )}
      </div>
      {match.trouble && <p role="status">{match.trouble}</p>}
      <p className="soft small">
        {text.follow(followers)} {off.length > 0 && text.between(plain(Math.max(mostOff, ...off)))}
      </p>
    </div>
  )
}
