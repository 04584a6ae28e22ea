import { Button } from '@mantine/core'
import { useMemo } from 'react'
import type { StoredDocument } from '../../../src/store/types.ts'
import { differences, merge } from '../../data/difference.ts'
import { Panel } from '../../shell/Panel.tsx'
import { words } from '../../words/catalogue.ts'
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
  const texts = words().documents.conflict
  const { before } = words().documents.difference
  const begun = base?.body ?? current.body
  const theirs = useMemo(() => differences(begun, current.body), [begun, current.body])
  const mine = useMemo(() => differences(begun, props.mine), [begun, props.mine])
  const { merged, both } = useMemo(() => merge(begun, props.mine, current.body), [begun, props.mine, current.body])
  return (
    <Panel title={texts.title} open onClose={props.onClose}>
      <p>{texts.saved(current.revision, moment(current.savedAt), base ? base.revision : null)}</p>
      <DifferenceTable caption={texts.theirs} head={[before, texts.theirsHead]} rows={theirs} />
      <DifferenceTable caption={texts.mine} head={[before, texts.mineHead]} rows={mine} />
      {both.length > 0 && (
        <p>
          <strong>{texts.both}</strong> {texts.keepsYours(both.map(differenceWords).join('; '))}
        </p>
      )}
      <div className="row">
        <Button onClick={() => void props.onMerge(merged)}>{both.length > 0 ? texts.keepMine : texts.keep}</Button>
        <Button variant="default" onClick={props.onTakeTheirs}>
          {texts.takeTheirs}
        </Button>
        <Button variant="default" onClick={() => void props.onCopy()}>
          {texts.copy}
        </Button>
        <Button variant="default" onClick={props.onClose}>
          {texts.later}
        </Button>
      </div>
    </Panel>
  )
}
