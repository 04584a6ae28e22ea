import { Button } from '@mantine/core'
import { useState } from 'react'
import { withoutOverridden } from '../../../src/model/documents/overrides.ts'
import type { ComparisonRecord, Override } from '../../../src/model/documents/records.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { Fold } from '../../shell/parts/Fold.tsx'
import { words } from '../../words/catalogue.ts'
import { listed } from '../../words/format.ts'
import { inputWords } from '../../words/inputs.ts'
import { AddOverride } from './AddOverride.tsx'
import { OwnMark } from './OwnMark.tsx'
import type { OwnNumbers } from './useOwnNumbers.ts'
import { computedWords, type Documents, overriddenName, ownWords, whyWords } from './words.ts'

/** The overridden numbers of a comparison: what is computed, what stands in its place, why; to be set and taken back. */
export function OwnNumbersPanel(props: { record: ComparisonRecord; own: OwnNumbers; documents: Documents }) {
  const { record, own, documents } = props
  const { overrides = [] } = record
  const edit = useEdit()
  const texts = words().overrides
  const [removed, setRemoved] = useState<Override | null>(null)
  const set = (next: Override[]) => edit.set(['overrides'], next.length > 0 ? next : undefined)
  const open = withoutOverridden(record.inputs, documents.options, overrides).map(({ id }) => id)
  const closed = record.inputs.filter(({ id }) => !open.includes(id))
  return (
    <section className={overrides.length > 0 ? 'sheet stack' : 'sheet stack no-print'} aria-labelledby="own-title">
      <Fold id="own-title" title={texts.title} open={overrides.length > 0}>
        <p>{texts.intro}</p>
        {overrides.length === 0 && <p className="soft">{texts.none}</p>}
        <ul className="shelf own-list">
          {overrides.map((override) => {
            const name = overriddenName(override, documents)
            const kept = own.kept.find(({ id }) => id === override.id)
            return (
              <li key={override.id}>
                <span>
                  <strong>{name}</strong>
                  <br />
                  <span className="visually-hidden">{texts.computed} </span>
                  {kept ? (
                    <s>{computedWords(kept)}</s>
                  ) : (
                    <span className="soft">{own.pending ? texts.computing : '–'}</span>
                  )}{' '}
                  <OwnMark /> <strong>{ownWords(override)}</strong>
                  <br />
                  <span className="soft small">{whyWords(override)}</span>
                  {own.idle.includes(override) && <span className="small loss"> {texts.idle}</span>}
                </span>
                {!edit.readOnly && (
                  <Button
                    size="compact-md"
                    variant="default"
                    aria-label={texts.removeOf(name)}
                    onClick={() => {
                      set(overrides.filter(({ id }) => id !== override.id))
                      setRemoved(override)
                    }}
                  >
                    {texts.remove}
                  </Button>
                )}
              </li>
            )
          })}
        </ul>
        {removed && !overrides.some(({ id }) => id === removed.id) && (
          <p role="status">
            {texts.removed(overriddenName(removed, documents))}{' '}
            <button
              type="button"
              className="opens"
              onClick={() => {
                set([...overrides, removed])
                setRemoved(null)
              }}
            >
              {texts.undo}
            </button>
          </p>
        )}
        {closed.length > 0 && (
          <p className="soft small">
            {texts.closes(
              listed(closed.map((input) => words().actions.quoted(inputWords(input, { ...documents }).name))),
            )}
          </p>
        )}
        {!edit.readOnly && (
          <AddOverride overrides={overrides} documents={documents} onAdd={(added) => set([...overrides, added])} />
        )}
      </Fold>
    </section>
  )
}
