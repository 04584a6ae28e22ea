import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { QuickSheetRecord } from '../../../src/model/documents/quickSheet.ts'
import { type Guess, pool } from '../../../src/model/sheet/index.ts'
import type { Round } from '../../../src/store/types.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import { readTime } from './times.ts'

/** The guesses together, to be changed by hand, and taken as the leg's range and as the belief about its level. */
export function TakeRange(props: { sheet: QuickSheetRecord; round: Round; guesses: readonly Guess[] }) {
  const { sheet, round } = props
  const edit = useEdit()
  const texts = words().quickSheet.rounds
  const { range, belief } = pool(props.guesses)
  const [typed, setTyped] = useState([range.low, range.likely, range.high].map((value) => plain(value, 1)))
  const [used, setUsed] = useState(false)
  const read = readTime(typed.join(' '))
  const error = typed.some((text) => text.trim() === '') ? words().guess.needed : 'error' in read ? read.error : null
  const index = sheet.ways.findIndex(({ id }) => id === round.way)
  const way = sheet.ways[index]
  const key = round.leg === 'finish' ? 'finishing' : round.leg
  const take = () => {
    if (!way || !('time' in read)) return
    edit.setText(['ways', index, key, 'time'], null, null)
    edit.set(['ways', index, key], { ...way[key], time: read.time, belief })
    setUsed(true)
  }
  const field = (label: string, at: number) => (
    <TextInput
      label={label}
      inputMode="decimal"
      value={typed[at] ?? ''}
      onChange={(event) => {
        const text = event.currentTarget.value
        setUsed(false)
        setTyped((before) => before.map((value, position) => (position === at ? text : value)))
      }}
    />
  )
  return (
    <div className="stack">
      <p className="small">{texts.rule}</p>
      <div className="row three" style={{ alignItems: 'end' }}>
        {field(texts.low, 0)}
        {field(texts.likely, 1)}
        {field(texts.high, 2)}
        <Button disabled={error !== null || !way || edit.readOnly} onClick={take}>
          {texts.use}
        </Button>
      </div>
      <p className="small">{texts.belief(plain(belief.low, 1), plain(belief.likely, 1), plain(belief.high, 1))}</p>
      {error && (
        <p role="alert" className="loss">
          {error}
        </p>
      )}
      <p role="status">{used ? texts.used : way ? '' : texts.gone}</p>
    </div>
  )
}
