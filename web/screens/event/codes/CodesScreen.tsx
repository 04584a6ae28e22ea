import { Checkbox } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { Link } from 'wouter'
import { CodeShown } from '../../../codes/CodeShown.tsx'
import { shownPack } from '../../../codes/pack.ts'
import { type StandsPack, withoutGame } from '../../../codes/standsPack.ts'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { moment } from '../../../words/format.ts'
import { EventNav } from '../EventNav.tsx'
import { useStandsPack } from '../useStandsPack.ts'
import './codesPage.css'

/** What phones need to know, for phones without a network: shown here, read by their cameras. */
export default function CodesScreen(props: { id: string }) {
  const texts = words().handin.toPhones
  const pack = useStandsPack(props.id)
  if (pack.data) return <Codes key={pack.data.mark} pack={pack.data} />
  if (pack.error)
    return <Trouble title={words().handin.notLoaded} error={pack.error} retry={() => void pack.refetch()} />
  return <Loading what={texts.loading} />
}

function Codes(props: { pack: StandsPack }) {
  const { pack } = props
  const { handin, codes } = words()
  const texts = handin.toPhones
  const [withGame, setWithGame] = useState(true)
  const shown = useQuery({
    queryKey: ['shownPack', pack.event.id, pack.mark, withGame],
    queryFn: () => shownPack(withGame ? pack : withoutGame(pack)),
    staleTime: Number.POSITIVE_INFINITY,
  })
  return (
    <div className="stack wide">
      <div className="stack">
        <p className="small">
          <Link href={`/event/${pack.event.id}`}>{pack.event.name}</Link>
        </p>
        <h1>{texts.title}</h1>
        <EventNav id={pack.event.id} name={pack.event.name} place="codes" />
      </div>
      {/* The code is what this page is opened for: it comes first, and where there is room what is said of it stands beside it. */}
      <div className="codes-page">
        {shown.data && <CodeShown key={String(withGame)} shown={shown.data} label={texts.label} texts={codes} />}
        {shown.error && <Trouble title={texts.notMade} error={shown.error} />}
        <div className="stack">
          <p>{texts.intro}</p>
          <p>{texts.holds(pack.matches.length, pack.assignments.length, moment(pack.serverTime))}</p>
          <Checkbox
            label={texts.withGame(pack.game.revision)}
            description={texts.withGameHelp}
            checked={withGame}
            onChange={(change) => setWithGame(change.currentTarget.checked)}
          />
        </div>
      </div>
    </div>
  )
}
