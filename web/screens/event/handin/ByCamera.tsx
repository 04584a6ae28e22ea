import { Button } from '@mantine/core'
import { useCallback, useMemo, useState } from 'react'
import { CodeError, readMessage } from '../../../../src/model/scouting/code/index.ts'
import type { Row } from '../../../../src/model/scouting/types.ts'
import { CodeReader } from '../../../codes/CodeReader.tsx'
import { rowsFrom } from '../../../codes/rows.ts'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { words } from '../../../words/catalogue.ts'
import { Counts } from './Arrivals.tsx'
import { tablesOf } from './findTable.ts'
import type { Entry } from './useHandIn.ts'

/** Codes from phones: each message that is whole is handed in at once, and the next phone may come. */
export function ByCamera(props: {
  pack: StandsPack
  entries: readonly Entry[]
  error: Error | null
  bring(rows: readonly Row[]): Promise<boolean>
}) {
  const { pack, entries, error, bring } = props
  const { handin: texts, codes } = words()
  const [open, setOpen] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const find = useMemo(() => tablesOf(pack), [pack])

  const take = useCallback(
    async (message: Uint8Array) => {
      setTrouble(null)
      try {
        const read = readMessage(message)
        if (read.what === 'pack') return setTrouble(texts.aPack)
        const rows = await rowsFrom(read.rows, find)
        void bring(rows)
      } catch (error) {
        setTrouble(error instanceof CodeError ? codes.problem[error.code] : (error as Error).message)
      }
    },
    [bring, find, texts, codes],
  )
  return (
    <section className="sheet stack" aria-labelledby="by-camera">
      <h2 id="by-camera">{texts.camera}</h2>
      <p>{texts.cameraHelp}</p>
      {open ? (
        <CodeReader texts={codes} onMessage={(message) => void take(message)} onClose={() => setOpen(false)} />
      ) : (
        <div>
          <Button onClick={() => setOpen(true)}>{texts.openCamera}</Button>
        </div>
      )}
      {/* Whoever holds phones before the camera looks here, and the list stands below two more ways. It is what speaks. */}
      {open && entries.length > 0 && (
        <p className="row arrivals-counts">
          <a href="#arrivals">{texts.arrivals.title}</a>
          {error ? <span className="loss">{error.message}</span> : <Counts entries={entries} />}
        </p>
      )}
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
    </section>
  )
}
