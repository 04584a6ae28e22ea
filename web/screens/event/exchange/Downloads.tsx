import { Button, Checkbox } from '@mantine/core'
import { useState } from 'react'
import { archiveFile, type KeptFile, tablesFile } from '../../../data/exchange.ts'
import { saveFile } from '../../../tables/save.ts'
import { words } from '../../../words/catalogue.ts'

/** The event as a file: whole, or as tables. */
export function Downloads(props: { event: string }) {
  const { event } = props
  const texts = words().exchange
  const [mark, setMark] = useState(false)
  const [photos, setPhotos] = useState(true)
  return (
    <section className="sheet stack" aria-labelledby="exchange-out">
      <h2 id="exchange-out">{texts.out}</h2>
      <p className="event-caution">{texts.caution}</p>
      <h3>{texts.archive}</h3>
      <p>{texts.archiveHelp}</p>
      <Download button={texts.saveArchive} ask={() => archiveFile(event)} />
      <h3>{texts.tables}</h3>
      <p>{texts.tablesHelp}</p>
      <Checkbox
        label={texts.photos}
        description={photos ? texts.photosHelp : texts.noPhotosHelp}
        checked={photos}
        onChange={(change) => setPhotos(change.currentTarget.checked)}
      />
      <Checkbox
        label={texts.mark}
        description={texts.markHelp}
        checked={mark}
        onChange={(change) => setMark(change.currentTarget.checked)}
      />
      <Download button={texts.saveTables} ask={() => tablesFile(event, { mark, photos })} />
    </section>
  )
}

function Download(props: { button: string; ask(): Promise<KeptFile> }) {
  const texts = words().exchange
  const [busy, setBusy] = useState(false)
  const [said, setSaid] = useState<{ done: string } | { trouble: string } | null>(null)
  const askIt = async () => {
    setSaid(null)
    setBusy(true)
    try {
      const { name, content } = await props.ask()
      saveFile(name, content, content.type)
      setSaid({ done: texts.handed(name) })
    } catch (error) {
      setSaid({ trouble: (error as Error).message })
    } finally {
      setBusy(false)
    }
  }
  return (
    <div className="row">
      <Button variant="default" loading={busy} onClick={() => void askIt()}>
        {props.button}
      </Button>
      {said && 'done' in said && (
        <span role="status" className="soft">
          {said.done}
        </span>
      )}
      {said && 'trouble' in said && (
        <span role="alert" className="loss">
          {said.trouble}
        </span>
      )}
    </div>
  )
}
