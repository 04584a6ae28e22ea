import { useLocation } from 'wouter'
import type { DocumentKind } from '../../../src/model/documents/records.ts'
import { useChanges } from '../../data/documents.ts'
import { copyId } from '../../data/identity.ts'
import { valueAt } from '../../data/place.ts'
import { headOf, renamed } from '../../data/renamed.ts'
import { words } from '../../words/catalogue.ts'
import { FilePicker } from './FilePicker.tsx'
import { readJson } from './fileText.ts'

/** Brings a document in from a JSON file. What is wrong with it is said with the place; nothing is half saved. */
export function ImportFile(props: { kind: DocumentKind; href: string; noun: string }) {
  const { kind, href, noun } = props
  const texts = words().documents.file
  const { save } = useChanges()
  const [, go] = useLocation()
  const bring = async (text: string) => {
    const body = readDocument(kind, text)
    const [id, name] = [
      String(valueAt(body, [...headOf[kind], 'id'])),
      String(valueAt(body, [...headOf[kind], 'name'])),
    ]
    const outcome = await save.mutateAsync({ kind, id, name, body, base: null })
    if ('saved' in outcome) return go(`${href}/${id}`)
    // There is one with this id already: the file comes in beside it.
    const other = copyId(id)
    const copied = await save.mutateAsync({ kind, id: other, name, body: renamed(kind, body, other, name), base: null })
    if ('saved' in copied) go(`${href}/${other}`)
  }
  return <FilePicker button={texts.bring(noun)} region={texts.region(noun)} input={texts.input(noun)} bring={bring} />
}

/** A document from the text of a file; throws a sentence for the person. */
export function readDocument(kind: DocumentKind, text: string): unknown {
  const body = readJson(text)
  if (typeof valueAt(body, [...headOf[kind], 'id']) !== 'string')
    throw new Error(words().documents.file.otherKind(words().documents.kinds[kind]))
  return body
}
