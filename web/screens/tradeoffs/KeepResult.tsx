import { Button } from '@mantine/core'
import type { CompareReport } from '../../../src/model/compare/types.ts'
import type { ComparisonRecord } from '../../../src/model/documents/records.ts'
import { words } from '../../words/catalogue.ts'

/** Keeps what was computed with the comparison, where it is not what is stored. */
export function KeepResult(props: {
  record: ComparisonRecord
  report: CompareReport
  onKeep(report: CompareReport): void
}) {
  const stored = props.record.result
  const same =
    stored !== null &&
    props.report.options.every(
      (option, index) => Math.abs(option.mean - (stored.options[index]?.mean ?? Number.NaN)) < 0.005,
    ) &&
    JSON.stringify(stored.belief ?? null) === JSON.stringify(props.report.belief ?? null)
  if (same) return null
  return (
    <div className="row">
      <Button variant="default" onClick={() => props.onKeep(props.report)}>
        {words().tradeoffs.keep}
      </Button>
      <span className="soft small">{words().tradeoffs.keepWhy}</span>
    </div>
  )
}
