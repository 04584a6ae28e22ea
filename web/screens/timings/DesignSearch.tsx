import { useState } from 'react'
import type { Mechanism } from '../../../src/model/documents/mechanism.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { searchedOf } from '../../../src/model/timing/index.ts'
import { words } from '../../words/catalogue.ts'
import { Search } from './search/Search.tsx'
import './search/search.css'

/** Reductions and numbers of motors for a mechanism, with their time, current and points per match. */
export function DesignSearch(props: { mechanism: Mechanism; index: number; game: Game; option: Option }) {
  const [open, setOpen] = useState(false)
  const searched = searchedOf(props.mechanism)
  if (!searched) return null
  return (
    <details
      className={open ? 'design-search' : 'design-search no-print'}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{words().search.title}</summary>
      {open && <Search key={`${props.mechanism.id} ${searched.calculator}`} {...props} searched={searched} />}
    </details>
  )
}
