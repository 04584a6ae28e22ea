import { Button } from '@mantine/core'
import { useMemo, useState } from 'react'
import { Link } from 'wouter'
import type { TimedTrial } from '../../../../src/model/documents/timing.ts'
import type { Duration, Game } from '../../../../src/model/documents/types.ts'
import { mean } from '../../../../src/model/duration/index.ts'
import { measured } from '../../../../src/model/samples/index.ts'
import { getDocument } from '../../../data/api.ts'
import { assembleOption, firstOption } from '../../../data/assemble.ts'
import { type Place, same } from '../../../data/difference.ts'
import { type Bodies, type Stored, useChanges } from '../../../data/documents.ts'
import { hasDraft } from '../../../data/draft.ts'
import { valueAt, withValueAt } from '../../../data/place.ts'
import { words } from '../../../words/catalogue.ts'
import { points, seconds, signedPoints } from '../../../words/format.ts'
import { useModel } from '../../../worker/useModel.ts'
import { useWaysToPlay } from '../useWaysToPlay.ts'
import { type Timed, timedPlace } from './parts.ts'

/** How many times count, what the answer becomes with them, and taking them over into the design. */
export function UseTimes(props: {
  timed: Timed
  /** Where the part’s Duration stands. */
  place: Place
  stored: Stored<'design'>
  game: Game
  trials: readonly TimedTrial[]
}) {
  const { timed, stored, trials } = props
  const texts = words().stopwatch
  const { save } = useChanges()
  const [said, setSaid] = useState<string | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const duration = useMemo(() => measured(trials), [trials])
  const now = valueAt(stored.body, props.place) as Duration | undefined
  const counting = trials.filter((trial) => trial.struck === null).length
  const struck = trials.length - counting
  if (!duration || !now) return <p className="soft">{texts.sum.few(counting)}</p>

  const take = async () => {
    setTrouble(null)
    setSaid(null)
    try {
      for (let round = 0; round < 4; round++) {
        const newest = await getDocument('design', stored.id)
        const body = newest.body as Bodies['design']
        const place = timedPlace(body.robot, timed.leg, timed.part)
        if (!place) return setTrouble(texts.use.gone)
        const outcome = await save.mutateAsync({
          kind: 'design',
          id: stored.id,
          name: newest.name,
          body: withValueAt(body, place, duration),
          base: newest.revision,
          note: texts.use.note(`${timed.legName}, ${timed.name}`, counting, struck).slice(0, 500),
        })
        if ('saved' in outcome) return setSaid(texts.use.done(outcome.saved.revision))
      }
      setTrouble(texts.use.busy)
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  const used = same(now, duration)
  const open = hasDraft('design', stored.id)
  const low = Math.min(...duration.seconds)
  const high = Math.max(...duration.seconds)
  return (
    <section className="stack" aria-label={texts.use.button(counting)} data-testid="use-times">
      <p>
        {texts.sum.said({
          count: counting,
          mean: seconds(mean(duration)),
          low: seconds(low),
          high: seconds(high),
          struck,
        })}{' '}
        {used ? texts.use.same : texts.use.before(seconds(mean(now)))}
      </p>
      {!used && <Answer {...props} duration={duration} />}
      {open ? (
        <p>
          {texts.use.draft} <Link href={`/designs/${stored.id}`}>{texts.back}</Link>
        </p>
      ) : (
        !used && (
          <div>
            <Button loading={save.isPending} onClick={() => void take()}>
              {texts.use.button(counting)}
            </Button>
          </div>
        )
      )}
      <p role="status">{said}</p>
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
    </section>
  )
}

/** What the design is expected to bring with the times taken, against what it brings now. */
function Answer(props: { place: Place; stored: Stored<'design'>; game: Game; duration: Duration }) {
  const { place, stored, game, duration } = props
  const ways = useWaysToPlay(stored.id)
  const way = ways.data?.[0]
  const asks = useMemo(() => {
    if (!ways.data) return null
    const played = (robot: Bodies['design']['robot']) =>
      way ? assembleOption(way.body, robot) : firstOption(game, robot)
    const before = played(stored.body.robot)
    const after = played(withValueAt(stored.body, place, duration).robot)
    return { name: way?.name ?? before.name, before: { game, option: before }, after: { game, option: after } }
  }, [ways.data, way, game, stored, place, duration])
  const before = useModel('quick', asks?.before ?? null)
  const after = useModel('quick', asks?.after ?? null)
  if (ways.error) return null
  if (!asks || !before.data || !after.data || after.isPlaceholderData) return <p className="soft">…</p>
  return (
    <p>
      {words().stopwatch.use.answer({
        before: points(before.data.total),
        after: points(after.data.total),
        change: signedPoints(after.data.total - before.data.total),
        way: asks.name,
      })}
    </p>
  )
}
