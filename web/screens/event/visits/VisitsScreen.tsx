import { useQuery } from '@tanstack/react-query'
import { Link } from 'wouter'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { useLive } from '../../../data/live.ts'
import { recordsOf } from '../../../data/records.ts'
import { Empty, Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { EventNav } from '../EventNav.tsx'
import { nameOfMatch, nameOfPerson } from '../matchNames.ts'
import { useNamedPack } from '../useStandsPack.ts'
import { Claims } from './Claims.tsx'
import { type Gathered, gather } from './gather.ts'
import './visits.css'

const said = ['visit', 'change', 'ranking', 'withdrawal'] as const

/** What teams say of themselves, how experts order robots, and which robots were changed since. */
export default function VisitsScreen(props: { id: string }) {
  const texts = words().visits
  const pack = useNamedPack(props.id)
  const { id } = props
  const records = useQuery({ queryKey: ['event', id, 'records', 'visits'], queryFn: () => recordsOf(id, said) })
  // They weigh a hundred times as much as all that is said, which does not wait for them.
  const photos = useQuery({
    queryKey: ['event', id, 'records', 'photos'],
    queryFn: () => recordsOf(id, ['photo', 'withdrawal']),
    enabled: records.isSuccess,
  })
  useLive(id)
  const error = pack.error ?? records.error
  if (error && !(pack.data && records.data))
    return (
      <Trouble
        title={texts.notLoaded}
        error={error}
        retry={() => {
          void pack.refetch()
          void records.refetch()
        }}
      />
    )
  if (!pack.data || !records.data) return <Loading what={texts.loading} />
  return (
    <>
      {photos.error && (
        <Trouble title={texts.photosNotLoaded} error={photos.error} retry={() => void photos.refetch()} />
      )}
      <Visits
        pack={pack.data}
        gathered={gather(records.data)}
        photos={photos.data ? gather(photos.data).photos : null}
      />
    </>
  )
}

function Visits(props: { pack: StandsPack; gathered: Gathered; photos: Gathered['photos'] | null }) {
  const { pack, gathered } = props
  const texts = words().visits
  const nothing = gathered.teams.length === 0 && gathered.rankings.length === 0
  return (
    <div className="stack wide">
      <div className="stack">
        <p className="small">
          <Link href={`/event/${pack.event.id}`}>{pack.event.name}</Link>
        </p>
        <h1>{texts.title}</h1>
        <EventNav id={pack.event.id} name={pack.event.name} place="visits" />
        <p>{texts.intro}</p>
      </div>
      {nothing && (
        <Empty title={texts.nothing}>
          <p>{texts.nothingHelp}</p>
        </Empty>
      )}
      {gathered.teams.map((team) => (
        <Claims key={team.team} pack={pack} team={team} photos={props.photos} />
      ))}
      {gathered.rankings.length > 0 && <Rankings pack={pack} rankings={gathered.rankings} />}
    </div>
  )
}

function Rankings(props: { pack: StandsPack; rankings: Gathered['rankings'] }) {
  const { pack } = props
  const texts = words().visits
  return (
    <section className="sheet stack" aria-labelledby="rankings">
      <h2 id="rankings">{texts.rankings}</h2>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.rankingsTable}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.match}</th>
              <th scope="col">{texts.by}</th>
              <th scope="col">{texts.order}</th>
              <th scope="col">{texts.who}</th>
            </tr>
          </thead>
          <tbody>
            {props.rankings.map(({ row, body }) => (
              <tr key={row.id}>
                <td>{nameOfMatch(pack, body.match)}</td>
                <td>{texts.ranked[body.by]}</td>
                <td>{body.order.join(' › ')}</td>
                <td>{nameOfPerson(pack, row.scout)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  )
}
