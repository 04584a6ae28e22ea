import { Loading } from '../../../../shell/states.tsx'
import { words } from '../../../../words/catalogue.ts'
import type { EventPage } from '../../EventFrame.tsx'
import { useCorrected } from '../../records/Corrected.tsx'
import { type Looked, RecordPanel } from '../../records/RecordPanel.tsx'
import { useNamedPack } from '../../useStandsPack.ts'

/** Records of a robot in a match, with the ways to choose among them and to correct one. */
export function LookAt({ page, looked, onClose }: { page: EventPage; looked: Looked; onClose(): void }) {
  const pack = useNamedPack(page.event.id)
  const corrected = useCorrected()
  if (!pack.data) return <Loading what={words().records.panel.loading} />
  return (
    <RecordPanel
      pack={pack.data}
      looked={looked}
      note={corrected.note(pack.data)}
      onCorrected={corrected.take}
      onClose={onClose}
    />
  )
}
