import { Button } from '@mantine/core'
import { useState } from 'react'
import { roundsFile } from '../../data/api.ts'
import { useRoundChanges } from '../../data/rounds.ts'
import { saveFile } from '../../tables/save.ts'
import { words } from '../../words/catalogue.ts'
import { FilePicker } from '../documents/FilePicker.tsx'
import { fileName } from '../documents/fileName.ts'
import { readJson } from '../documents/fileText.ts'

/** The closed rounds of a sheet as a file, and those of a file onto the sheet. */
export function RoundFiles(props: { saved: string; name: string; closed: number }) {
  const texts = words().quickSheet.rounds
  const { bring } = useRoundChanges(props.saved)
  const [said, setSaid] = useState<string | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const save = async () => {
    setTrouble(null)
    try {
      const file = await roundsFile(props.saved)
      saveFile(`${fileName(texts.fileOf(props.name))}.json`, `${JSON.stringify(file, null, 2)}\n`, 'application/json')
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  const take = async (text: string) => {
    setSaid(null)
    const file = readJson(text)
    if (typeof file !== 'object' || file === null || !('rounds' in file)) throw new Error(texts.otherFile)
    const { added, already } = await bring.mutateAsync(file)
    setSaid(texts.came(added, already))
  }
  return (
    <div className="stack">
      <p className="soft small">{texts.files}</p>
      <div className="row" style={{ alignItems: 'start' }}>
        {props.closed > 0 && (
          <Button variant="default" onClick={() => void save()}>
            {texts.save}
          </Button>
        )}
        <FilePicker button={texts.bring} region={texts.bringRegion} input={texts.bringInput} bring={take} />
      </div>
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
      <p role="status">{said}</p>
    </div>
  )
}
