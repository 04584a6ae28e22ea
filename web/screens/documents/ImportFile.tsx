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

/** Brings a document in from a JSON file. What is wrong with it is said with the place; nothing is half saved. */
export function ImportFile(props: { kind: DocumentKind; href: string; noun: string }) {
  const { kind, href, noun } = props
  const { save } = useChanges()
  const [, go] = useLocation()
  const input = useRef<HTMLInputElement>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const bring = async (file: File) => {
    setTrouble(null)
    setProblems([])
    try {
      const body = readDocument(kind, await file.text())
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
    <section className="stack" aria-label={`Bring in a ${noun}`}>
      <div>
        <input
          ref={input}
          type="file"
          accept="application/json,.json"
          aria-label={`File with a ${noun}`}
          className="visually-hidden"
          tabIndex={-1}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0]
            event.currentTarget.value = ''
            if (file) void bring(file)
          }}
        />
        <Button variant="default" onClick={() => input.current?.click()}>
          Bring in a {noun} from a file
        </Button>
      </div>
      {trouble && (
        <div role="alert" className="loss">
          <p>{trouble}</p>
          {problems.length > 1 && (
            <ul>
              {problems.slice(0, 20).map((problem) => (
                <li key={`${problem.path.join('/')} ${problem.message}`}>
                  {problem.path.join(' › ')}: {problem.message}
                </li>
              ))}
            </ul>
          )}
        </div>
      )}
    </section>
  )
}

/** A document from the text of a file; throws a sentence for the person. */
export function readDocument(kind: DocumentKind, text: string): unknown {
  let body: unknown
  try {
    body = JSON.parse(text)
  } catch {
    throw new Error('The file is not JSON. Was it saved from Cyclewright as a file?')
  }
  if (typeof valueAt(body, [...headOf[kind], 'id']) !== 'string')
    throw new Error(`The file does not hold a ${kind}: it has no id where a ${kind} has it.`)
  return body
}
