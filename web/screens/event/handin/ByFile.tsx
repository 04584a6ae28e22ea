import type { Row } from '../../../../src/model/scouting/types.ts'
import { readOutboxFile } from '../../../codes/outboxFile.ts'
import { words } from '../../../words/catalogue.ts'
import { FilePicker } from '../../documents/FilePicker.tsx'

/** A phone's outbox as a file. */
export function ByFile(props: { bring(rows: readonly Row[]): Promise<boolean> }) {
  const { handin: texts, codes } = words()
  const bring = async (text: string) => {
    const read = readOutboxFile(text)
    if ('problem' in read) throw new Error(codes.file[read.problem])
    if (read.rows.length === 0) throw new Error(texts.emptyFile)
    await props.bring(read.rows)
  }
  return (
    <section className="sheet stack" aria-labelledby="by-file">
      <h2 id="by-file">{texts.file}</h2>
      <p>{texts.fileHelp}</p>
      <FilePicker button={texts.chooseFile} region={texts.fileRegion} input={texts.fileInput} bring={bring} />
    </section>
  )
}
