import { Button } from '@mantine/core'
import { useMemo } from 'react'
import type { StoredDocument } from '../../../src/store/types.ts'
import { differences, merge } from '../../data/difference.ts'
import { Panel } from '../../shell/Panel.tsx'
import { differenceWords } from '../../words/differences.ts'
import { moment } from '../../words/format.ts'
import { DifferenceTable } from './DifferenceTable.tsx'

/** Somebody saved in between: what they changed, what you changed, and four ways on. Nothing is lost in any of them. */
export function ConflictPanel(props: {
  conflict: { current: StoredDocument; base: StoredDocument | null }
  mine: unknown
  onClose(): void
  onMerge(merged: unknown): Promise<void>
  onTakeTheirs(): void
  onCopy(): Promise<void>
}) {
  const { current, base } = props.conflict
  const begun = base?.body ?? current.body
  const theirs = useMemo(() => differences(begun, current.body), [begun, current.body])
  const mine = useMemo(() => differences(begun, props.mine), [begun, props.mine])
  const { merged, both } = useMemo(() => merge(begun, props.mine, current.body), [begun, props.mine, current.body])
  return (
    <Panel title="Somebody saved in between" open onClose={props.onClose}>
      <p>
        Revision {current.revision} was saved on {moment(current.savedAt)}, after your edit began
        {base ? ` from revision ${base.revision}` : ''}. Yours is still here.
      </p>
      <DifferenceTable caption="What they changed" head={['Before', 'Theirs']} rows={theirs} />
      <DifferenceTable caption="What you changed" head={['Before', 'Yours']} rows={mine} />
      {both.length > 0 && (
        <p>
          <strong>Changed by both:</strong> {both.map(differenceWords).join('; ')}. Keeping both keeps yours there.
        </p>
      )}
      <div className="row">
        <Button onClick={() => void props.onMerge(merged)}>
          {both.length > 0 ? 'Keep both, mine where both changed' : 'Keep both'}
        </Button>
        <Button variant="default" onClick={props.onTakeTheirs}>
          Take theirs
        </Button>
        <Button variant="default" onClick={() => void props.onCopy()}>
          Save mine as a copy
        </Button>
        <Button variant="default" onClick={props.onClose}>
          Decide later
        </Button>
      </div>
    </Panel>
  )
}
