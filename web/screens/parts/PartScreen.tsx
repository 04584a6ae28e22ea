import { Link } from 'wouter'
import { within } from '../../../src/model/documents/checkIds.ts'
import { type Stored, useStored } from '../../data/documents.ts'
import { type CautionId, Cautions } from '../../shell/Cautions.tsx'
import { EditProvider } from '../../shell/fields/EditContext.tsx'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { ExportFile } from '../documents/ExportFile.tsx'
import { SaveBar } from '../documents/SaveBar.tsx'
import { useEditing, useRevisionAsked } from '../documents/useEditing.ts'
import type { PartKind } from './numbers.ts'
import { PartForm } from './PartForm.tsx'
import { partProblems } from './problems.ts'

const cautionsOf: { readonly [Kind in PartKind]: CautionId[] } = {
  motor: ['spinning', 'energy'],
  cylinder: ['air'],
  valve: ['air'],
  compressor: ['air', 'energy'],
  tank: ['air'],
  wheel: ['spinning'],
}

/** One part of the shelf: its numbers, where they come from, and its revisions. */
export function PartScreen(props: { id: string }) {
  const texts = words().parts.form
  const revision = useRevisionAsked()
  const stored = useStored('part', props.id, revision)
  if (stored.error && !stored.data)
    return <Trouble title={texts.trouble} error={stored.error} retry={() => void stored.refetch()} />
  if (!stored.data) return <Loading what={texts.what} />
  return <PartEditor key={revision ?? 'newest'} stored={stored.data} old={revision !== undefined} />
}

function PartEditor(props: { stored: Stored<'part'>; old: boolean }) {
  const texts = words().parts
  const editing = useEditing({ kind: 'part', ...props })
  const { part } = editing.draft.value
  const problems = within(['part'], partProblems(part))
  return (
    <EditProvider value={editing.fields(problems)}>
      <div className="stack wide">
        <div className="row spread">
          <div>
            <p className="label">{texts.form.label(texts.kinds[part.kind])}</p>
            <h1>{part.name || texts.form.noName}</h1>
          </div>
          <SaveBar of={editing} href="/parts" />
        </div>
        {problems.length > 0 && (
          <div role="alert" className="loss">
            <p>{texts.form.problems}</p>
            <ul>
              {problems.map(({ path, message }) => (
                <li key={path.join('/')}>{message}</li>
              ))}
            </ul>
          </div>
        )}
        <PartForm part={part} />
        <div className="row">
          <ExportFile name={part.name} body={editing.draft.value} />
          <Link href="/parts">{texts.form.back}</Link>
        </div>
        <Cautions which={cautionsOf[part.kind]} />
      </div>
    </EditProvider>
  )
}
