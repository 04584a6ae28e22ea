import { Button } from '@mantine/core'
import { saveFile } from '../../tables/save.ts'
import { words } from '../../words/catalogue.ts'
import { fileName } from './fileName.ts'

/** Offers a document as a JSON file. */
export function ExportFile(props: { name: string; body: unknown }) {
  const texts = words().documents.file
  const save = () =>
    saveFile(`${fileName(props.name)}.json`, `${JSON.stringify(props.body, null, 2)}\n`, 'application/json')
  return (
    <Button variant="default" onClick={save}>
      {texts.save}
    </Button>
  )
}
