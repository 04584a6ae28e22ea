import { Button } from '@mantine/core'
import { useRef, useState } from 'react'
import { useLocation } from 'wouter'
import type { DocumentKind } from '../../../src/model/documents/records.ts'
import type { Problem } from '../../../src/model/errors.ts'
import { problemsOf } from '../../data/api.ts'
import { useChanges } from '../../data/documents.ts'
import { copyId } from '../../data/identity.ts'
import { valueAt } from '../../data/place.ts'
import { headOf, renamed } from '../../data/renamed.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'

/** Brings a document in from a JSON file. What is wrong with it is said with the place; nothing is half saved. */
export function ImportFile(props: { kind: DocumentKind; href: string; noun: string }) {
  const { kind, href, noun } = props
  const texts = words().documents.file
  const { save } = useChanges()
  const [, go] = useLocation()
  const input = useRef<HTMLInputElement>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const bring = async (file: File) => {
    setTrouble(null)
    setProblems([])
    try {
      const body = readDocument(kind, await textOf(file))
      const [id, name] = [
        String(valueAt(body, [...headOf[kind], 'id'])),
        String(valueAt(body, [...headOf[kind], 'name'])),
      ]
      const outcome = await save.mutateAsync({ kind, id, name, body, base: null })
      if ('saved' in outcome) return go(`${href}/${id}`)
      // There is one with this id already: the file comes in beside it.
      const other = copyId(id)
      const copied = await save.mutateAsync({
        kind,
        id: other,
        name,
        body: renamed(kind, body, other, name),
        base: null,
      })
      if ('saved' in copied) go(`${href}/${other}`)
    } catch (error) {
      setTrouble((error as Error).message)
      setProblems(problemsOf(error))
    }
  }
  return (
    <section className="stack" aria-label={texts.region(noun)}>
      <div>
        <input
          ref={input}
          type="file"
          accept="application/json,.json"
          aria-label={texts.input(noun)}
          className="visually-hidden"
          tabIndex={-1}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0]
            event.currentTarget.value = ''
            if (file) void bring(file)
          }}
        />
        <Button variant="default" onClick={() => input.current?.click()}>
          {texts.bring(noun)}
        </Button>
      </div>
      {trouble && (
        <div role="alert" className="loss">
          <p>{trouble}</p>
          {problems.length > 1 && (
            <ul>
              {problems.slice(0, most).map((problem) => (
                <li key={`${problem.path.join('/')} ${problem.message}`}>
                  {texts.problem(problem.path.join(' › '), problem.message)}
                </li>
              ))}
              {problems.length > most && <li>{texts.more(problems.length - most)}</li>}
            </ul>
          )}
        </div>
      )}
    </section>
  )
}

/** Problems that are listed; a broken file can have hundreds. */
const most = 20

/** What the server reads of a document at most, and what a file with all its spaces can have then (bytes). */
const largest = { document: 2_000_000, file: 10_000_000 }

const tooLarge = (bytes: number): Error =>
  new Error(words().documents.file.tooLarge(plain(bytes / 1e6, 1), plain(largest.document / 1e6)))

async function textOf(file: File): Promise<string> {
  const texts = words().documents.file
  if (file.size > largest.file) throw tooLarge(file.size)
  try {
    return await file.text()
  } catch (error) {
    throw new Error(texts.notRead((error as Error).message))
  }
}

/** A document from the text of a file; throws a sentence for the person. */
export function readDocument(kind: DocumentKind, text: string): unknown {
  let body: unknown
  try {
    body = JSON.parse(text)
  } catch {
    throw new Error(words().documents.file.notJson)
  }
  if (typeof valueAt(body, [...headOf[kind], 'id']) !== 'string')
    throw new Error(words().documents.file.otherKind(words().documents.kinds[kind]))
  const size = new Blob([JSON.stringify(body)]).size
  if (size > largest.document) throw tooLarge(size)
  return body
}
