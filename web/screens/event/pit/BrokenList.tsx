import { useQuery } from '@tanstack/react-query'
import type { Broken } from '../../../../src/model/briefing/broken.ts'
import type { Clock } from '../../../../src/model/documents/types.ts'
import { client, said } from '../../../data/api.ts'
import type { EventPack } from '../../../data/eventPack.ts'
import { Loading } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { seconds } from '../../../words/format.ts'
import { clock } from '../briefing/said.ts'
import { nameOfMatch } from '../matchNames.ts'

const toEnd = ({ auto, pause, teleop }: Clock, elapsed: number): string =>
  clock(Math.max(0, auto + pause + teleop - elapsed))

function broken(game: EventPack['game'], of: Broken): string[] {
  const texts = words().pitBoard
  const at = (elapsed: number) => toEnd(game.clock, elapsed)
  return [
    ...(of.absent ? [texts.absent] : []),
    ...(of.stoppedAt === null ? [] : [texts.stoppedFor(at(of.stoppedAt))]),
    ...of.stops.map(({ from, to }) => texts.stopped(at(from), at(to ?? from))),
    ...(of.lostSeconds > 0 ? [texts.lost(seconds(of.lostSeconds))] : []),
    ...(of.dropped > 0 ? [texts.dropped(of.dropped)] : []),
    ...of.notes.map((note) => texts.note(note)),
  ]
}

/** What scouts saw break or stop of our robot, latest match first. Times are time left. */
export function BrokenList({ pack, team }: { pack: EventPack; team: string }) {
  const texts = words().pitBoard
  const { id } = pack.event
  const found = useQuery({
    queryKey: ['event', id, 'records', 'broken', team],
    queryFn: () => said(client.briefing.broken.query({ event: id, team })) as Promise<Broken[]>,
    placeholderData: (before) => before,
  })
  return (
    <section className="sheet stack" aria-labelledby="pit-broken">
      <h2 id="pit-broken">{texts.broken}</h2>
      {found.data ? (
        found.data.length === 0 ? (
          <p>{texts.nothingBroken}</p>
        ) : (
          <ul className="pit-list">
            {found.data.map((each) => (
              <li key={each.match}>
                <strong>{nameOfMatch(pack, each.match)}</strong>: {broken(pack.game, each).join('; ')}
              </li>
            ))}
          </ul>
        )
      ) : found.error ? (
        <p role="alert">
          {texts.brokenTrouble}: {found.error.message}
        </p>
      ) : (
        <Loading what={texts.what} />
      )}
    </section>
  )
}
