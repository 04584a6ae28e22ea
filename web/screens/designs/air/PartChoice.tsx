import { NativeSelect } from '@mantine/core'
import { Link } from 'wouter'
import type { Compressor, Part, Tank } from '../../../../src/model/timing/parts.ts'
import type { Place } from '../../../data/difference.ts'
import { useAllStored, useList } from '../../../data/documents.ts'
import { useEdit } from '../../../shell/fields/EditContext.tsx'
import { words } from '../../../words/catalogue.ts'
import { day } from '../../../words/format.ts'

/** The shelf's parts, as far as they are loaded. */
export function useShelf() {
  const list = useList('part')
  const stored = useAllStored(
    'part',
    (list.data ?? []).map(({ id }) => ({ id })),
  )
  return {
    parts: list.data && stored.data ? stored.data.map(({ body }) => body.part) : null,
    error: list.error ?? stored.error,
  }
}

export const ofKind = <Kind extends Part['kind']>(parts: readonly Part[] | null, kind: Kind) =>
  (parts ?? []).filter((part): part is Extract<Part, { kind: Kind }> => part.kind === kind)

const same = (a: Part, b: Part): boolean => JSON.stringify(a) === JSON.stringify(b)

const here = '\u0000'

/** A part of the design that can be replaced by a copy of one on the shelf, with where its numbers come from. */
export function PartChoice(props: { place: Place; part: Tank | Compressor }) {
  const { place, part } = props
  const edit = useEdit()
  const texts = words().air.part
  const { parts, error } = useShelf()
  const choices = ofKind(parts, part.kind)
  const chosen = choices.find((one) => same(one, part))
  return (
    <div>
      <NativeSelect
        label={texts[part.kind]}
        disabled={edit.readOnly || choices.length === 0}
        value={chosen?.id ?? here}
        data={[
          ...(chosen ? [] : [{ value: here, label: texts.own(part.name) }]),
          ...choices.map(({ id, name }) => ({ value: id, label: name })),
        ]}
        onChange={(event) => {
          const found = choices.find(({ id }) => id === event.currentTarget.value)
          if (found) edit.set(place, found)
        }}
      />
      <p className="soft small">
        {error ? texts.trouble : parts === null ? texts.loading : texts.source(part.source, day(part.date))}{' '}
        <Link href="/parts">{texts.shelf}</Link>
      </p>
    </div>
  )
}
