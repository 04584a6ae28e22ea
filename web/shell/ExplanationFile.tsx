import { explanationTable } from '../tables/explanation.ts'
import type { Explanation } from '../words/explain.ts'
import { TableDownload } from './TableDownload.tsx'

/** The parts of an opened number as a file; loaded when a number is opened. */
export default function ExplanationFile(props: { explanation: Explanation }) {
  return <TableDownload title={props.explanation.title} table={() => explanationTable(props.explanation)} />
}
