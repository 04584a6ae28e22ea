import { Button } from '@mantine/core'
import { useRef, useState } from 'react'
import type { Problem } from '../../../src/model/errors.ts'
import { problemsOf } from '../../data/api.ts'
import { words } from '../../words/catalogue.ts'
import { readText } from './fileText.ts'

/**
 * A button that takes a JSON file and gives its text to `bring`. What that throws is said under it, with the places where
 * the server named some.
 */
export function FilePicker(props: {
  button: string
  region: string
  input: string
  bring(text: string): Promise<void>
}) {
  const texts = words().documents.file
  const input = useRef<HTMLInputElement>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const take = async (file: File) => {
    setTrouble(null)
    setProblems([])
    try {
      await props.bring(await readText(file))
    } catch (error) {
      setTrouble((error as Error).message)
      setProblems(problemsOf(error))
    }
  }
  return (
    <section className="stack" aria-label={props.region}>
      <div>
        <input
          ref={input}
          type="file"
          accept="application/json,.json"
          aria-label={props.input}
          className="visually-hidden"
          tabIndex={-1}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0]
            event.currentTarget.value = ''
            if (file) void take(file)
          }}
        />
        <Button variant="default" onClick={() => input.current?.click()}>
          {props.button}
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
