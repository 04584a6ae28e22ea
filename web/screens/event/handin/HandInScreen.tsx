import { Link } from 'wouter'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { EventNav } from '../EventNav.tsx'
import { useStandsPack } from '../useStandsPack.ts'
import { Arrivals } from './Arrivals.tsx'
import { ByCamera } from './ByCamera.tsx'
import { ByFile } from './ByFile.tsx'
import { KeySheets } from './KeySheets.tsx'
import { useHandIn } from './useHandIn.ts'
import './handin.css'

/** Where records come in that found no network: codes before the camera, files, and sheets of paper. */
export default function HandInScreen(props: { id: string }) {
  const texts = words().handin
  const pack = useStandsPack(props.id)
  if (pack.data) return <HandIn key={props.id} pack={pack.data} />
  if (pack.error) return <Trouble title={texts.notLoaded} error={pack.error} retry={() => void pack.refetch()} />
  return <Loading what={texts.loading} />
}

function HandIn(props: { pack: StandsPack }) {
  const { pack } = props
  const texts = words().handin
  const handed = useHandIn()
  return (
    <div className="stack wide">
      <div className="stack">
        <p className="small">
          <Link href={`/event/${pack.event.id}`}>{pack.event.name}</Link>
        </p>
        <h1>{texts.title}</h1>
        <EventNav id={pack.event.id} name={pack.event.name} place="hand-in" />
        <p>{texts.intro}</p>
      </div>
      <ByCamera pack={pack} {...handed} />
      <ByFile bring={handed.bring} />
      <KeySheets pack={pack} bring={handed.bring} />
      <Arrivals pack={pack} {...handed} />
    </div>
  )
}
