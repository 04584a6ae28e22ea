import { Button } from '@mantine/core'
import type { CompareReport } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import { words } from '../../words/catalogue.ts'
import { keptAs } from './keptAs.ts'

/** Keeps what was computed with the comparison, where it is not what is stored. */
export function KeepResult(props: {
  record: ComparisonRecord
  report: CompareReport
  onKeep(report: CompareReport): void
}) {
  const kept = keptAs(props.record.result, props.report)
  const texts = words().tradeoffs
  if (kept === 'same') return null
  return (
    <div className="row">
      <Button variant="default" onClick={() => props.onKeep(props.report)}>
        {texts.keep}
      </Button>
      <span className="soft small">{kept === 'nothing' ? texts.keepFirst : texts.keepWhy}</span>
    </div>
  )
}
