import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { Link } from 'wouter'
import type { Part } from '../../../src/model/timing/index.ts'
import { type Place, same } from '../../data/difference.ts'
import { valueAt } from '../../data/place.ts'
import { forgetTexts, useEdit } from '../../shell/fields/EditContext.tsx'
import { NumberField } from '../../shell/fields/NumberField.tsx'
import { shownNumber } from '../../shell/fields/parse.ts'
import { TextField } from '../../shell/fields/TextField.tsx'
import { useUnits } from '../../units/system.ts'
import { words } from '../../words/catalogue.ts'
import { day } from '../../words/format.ts'
import { numbersOf } from '../parts/numbers.ts'
import { numberWords } from './problems.ts'
import { useShelf } from './useShelf.ts'
import './timings.css'

const other = '\u0000'

/**
 * A part of the shelf, copied into the document: chosen, changed in place, and told where its numbers come from.
 * `numbers`: whether its own numbers can be unfolded here; where the form has fields for them, they can not.
 */
export function PartField(props: { place: Place; label: string; kind: Part['kind']; numbers?: boolean }) {
  const { place, label, kind, numbers = true } = props
  const edit = useEdit()
  const texts = words().timingInputs.part
  const shelf = useShelf()
  const [open, setOpen] = useState(false)
  const part = valueAt(edit.document, place) as Part | undefined
  if (!part) return null
  const choices = shelf.parts.filter((each) => each.kind === kind)
  const own = choices.find(({ id }) => id === part.id)
  const take = (next: Part) => {
    forgetTexts(edit, place)
    edit.set(place, next)
  }
  return (
    <div className="stack timing-part">
      <NativeSelect
        label={label}
        disabled={edit.readOnly}
        value={own ? part.id : other}
        data={[
          ...(own ? [] : [{ value: other, label: part.name }]),
          ...choices.map(({ id, name }) => ({ value: id, label: name })),
        ]}
        onChange={(event) => {
          const next = choices.find(({ id }) => id === event.currentTarget.value)
          if (next) take(next)
        }}
      />
      <p className="soft small">
        {texts.from(part.source || texts.noSource, day(part.date))} {!own && shelf.loaded && texts.off}
        {shelf.error && `${texts.troubled} ${shelf.error.message}`}{' '}
        <Link className="no-print" href="/parts">
          {texts.shelf}
        </Link>
      </p>
      {own && !same(own, part) && (
        <p className="small timing-note">
          {texts.changed}{' '}
          {!edit.readOnly && (
            <Button size="compact-sm" variant="default" onClick={() => take(own)}>
              {texts.take(own.name)}
            </Button>
          )}
        </p>
      )}
      {numbers && <p className="only-print small">{numbersInWords(part)}</p>}
      {numbers && (
        <details className="part-numbers no-print" onToggle={(event) => setOpen(event.currentTarget.open)}>
          <summary>{texts.numbers(part.name)}</summary>
          {open && <PartNumbers part={part} place={place} />}
        </details>
      )}
    </div>
  )
}

/** A part's numbers in one line, for paper, where nothing unfolds. */
export function numbersInWords(part: Part): string {
  const { labels } = words().parts
  const values = part as unknown as { readonly [key: string]: number | undefined }
  return numbersOf[part.kind]
    .flatMap(({ key, column: _, optional: __, ...limits }) => {
      const value = values[key]
      if (value === undefined) return []
      const label = labels[key as keyof typeof labels]
      return `${label} ${numberWords(Number(value.toPrecision(4)), { key, min: 0, ...limits })}`
    })
    .join(' · ')
}

/** The copy's own numbers with where they come from. */
function PartNumbers({ part, place }: { part: Part; place: Place }) {
  const system = useUnits()
  const texts = words().parts
  const numbers = numbersOf[part.kind].filter(({ key, optional }) => !optional || key in part)
  return (
    <div className="stack">
      <p className="soft small">{words().timingInputs.part.copied}</p>
      <div className="form-grid">
        <TextField place={[...place, 'name']} label={texts.name} required />
        <TextField place={[...place, 'source']} label={texts.source} />
        <TextField place={[...place, 'date']} label={texts.date} />
        {numbers.map(({ key, column: _, optional: __, ...rules }) => {
          const value = (part as unknown as { [key: string]: number })[key] ?? 0
          const shown = Math.abs(shownNumber(value, rules, system)) || 1
          return (
            <NumberField
              key={key}
              place={[...place, key]}
              label={texts.labels[key as keyof typeof texts.labels]}
              step={10 ** (Math.floor(Math.log10(shown)) - 1)}
              {...rules}
            />
          )
        })}
      </div>
    </div>
  )
}
