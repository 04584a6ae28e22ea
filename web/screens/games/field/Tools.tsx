import { Button, Checkbox, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import type { Game } from '../../../../src/model/documents/types.ts'
import { useUnits } from '../../../units/system.ts'
import { sayQuantity } from '../../../units/write.ts'
import { words } from '../../../words/catalogue.ts'
import { memoWords } from '../../../words/memo.tsx'
import { type Added, withObstacle, withPlace, withSpot, withStart } from './additions.ts'
import { thingName } from './names.ts'
import { type PlaceList, type Thing, thingsOf } from './things.ts'
import { placeKeys } from './zone.ts'

export interface ToolState {
  /** Which of the grids. */
  grid: number
  level: boolean
  alike: boolean
  others: boolean
  kept: boolean
  zoom: number
}

export const firstTools: ToolState = { grid: 2, level: true, alike: true, others: true, kept: false, zoom: 0 }

const inch = 0.0254
/** Steps to choose from (m), round in the units shown; 0 for none. */
export const grids = {
  metric: [0, 0.05, 0.1, 0.25, 0.5],
  inchPound: [0, 0.5 * inch, inch, 6 * inch, 12 * inch],
} as const

/** How things move over the field, and what is drawn. */
export const Tools = memoWords(function Tools(props: { tools: ToolState; onTools(tools: ToolState): void }) {
  const { tools, onTools } = props
  const system = useUnits()
  const texts = words().field.tools
  const box = (key: 'level' | 'alike' | 'others' | 'kept') => (
    <Checkbox
      label={texts[key]}
      checked={tools[key]}
      onChange={(event) => onTools({ ...tools, [key]: event.currentTarget.checked })}
    />
  )
  return (
    <fieldset className="row field-tools">
      <legend className="visually-hidden">{texts.legend}</legend>
      <NativeSelect
        label={texts.grid}
        value={String(tools.grid)}
        data={grids[system].map((size, index) => ({
          value: String(index),
          label: size === 0 ? texts.free : sayQuantity(size, 'length', system),
        }))}
        onChange={(event) => onTools({ ...tools, grid: Number(event.currentTarget.value) })}
      />
      <NativeSelect
        label={texts.zoom}
        value={String(tools.zoom)}
        data={texts.zooms.map((label, index) => ({ value: String(index), label }))}
        onChange={(event) => onTools({ ...tools, zoom: Number(event.currentTarget.value) })}
      />
      <div className="tool-boxes">
        {box('level')}
        {box('alike')}
        {box('others')}
        {box('kept')}
      </div>
    </fieldset>
  )
})

/** What to put on the field next, by its name in the list. */
function add(game: Game, what: string): Added {
  const [kind, index] = what.split('/')
  if (what === 'start') return withStart(game)
  if (what === 'box' || what === 'triangle') return withObstacle(game, what)
  return index === undefined ? withPlace(game, kind as PlaceList) : withSpot(game, kind as PlaceList, Number(index))
}

export const AddAndPick = memoWords(function AddAndPick(props: {
  game: Game
  selected: Thing | null
  readOnly: boolean
  onPick(key: string): void
  onAdd(added: Added): void
}) {
  const { game } = props
  const [what, setWhat] = useState('start')
  const texts = words().field
  const kinds = [
    { value: 'start', label: texts.add.start },
    { value: 'box', label: texts.add.box },
    { value: 'triangle', label: texts.add.triangle },
    { value: 'sources', label: texts.add.source },
    { value: 'goals', label: texts.add.goal },
    { value: 'finishes', label: texts.add.finish },
    ...placeKeys(game).map(({ value, name }) => ({ value, label: texts.add.spotOf(name) })),
  ]
  const chosen = kinds.some(({ value }) => value === what) ? what : 'start'
  return (
    <>
      <NativeSelect
        label={texts.tools.pick}
        value={props.selected?.key ?? ''}
        data={[
          { value: '', label: texts.tools.nobody },
          ...thingsOf(game)
            .filter(({ kind }) => kind !== 'corner')
            .map((thing) => ({ value: thing.key, label: thingName(thing) })),
        ]}
        onChange={(event) => props.onPick(event.currentTarget.value)}
      />
      {!props.readOnly && (
        <div className="row" style={{ alignItems: 'end', flexWrap: 'nowrap' }}>
          <NativeSelect
            label={texts.add.label}
            value={chosen}
            data={kinds}
            style={{ flex: 1, minWidth: 0 }}
            onChange={(event) => setWhat(event.currentTarget.value)}
          />
          <Button variant="default" onClick={() => props.onAdd(add(game, chosen))}>
            {texts.add.button}
          </Button>
        </div>
      )}
    </>
  )
})
