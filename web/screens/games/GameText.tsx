import { Button, Textarea } from '@mantine/core'
import { useState } from 'react'
import type { Game } from '../../../src/model/documents/types.ts'
import type { Problem } from '../../../src/model/errors.ts'
import { checkDocument } from '../../data/api.ts'
import { words } from '../../words/catalogue.ts'
import { faultIn, pathWords } from './jsonText.ts'
import { SchemaLink } from './SchemaLink.tsx'

/** The whole game as text, for who likes that better. It is taken over when it has the form of a game. */
export function GameText(props: { game: Game; readOnly: boolean; onApply(game: Game): void }) {
  const [open, setOpen] = useState(false)
  const texts = words().games.text
  return (
    <details className="fold" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{texts.title}</summary>
      {open && <Text {...props} />}
    </details>
  )
}

function Text(props: { game: Game; readOnly: boolean; onApply(game: Game): void }) {
  const [text, setText] = useState<string | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const [busy, setBusy] = useState(false)
  const texts = words().games.text
  const read = async (written: string): Promise<void> => {
    let body: unknown
    try {
      body = JSON.parse(written)
    } catch {
      const at = faultIn(written)
      return setTrouble(texts.noJson(at ? texts.line(at.line, at.column) : ''))
    }
    const { shape, problems: found } = await checkDocument('game', body)
    // What only does not fit together yet is said by the forms, where it can be mended.
    if (!shape) {
      setProblems(found)
      return setTrouble(texts.wrong)
    }
    if ((body as Game).id !== props.game.id) return setTrouble(texts.otherId)
    props.onApply(body as Game)
    setText(null)
  }
  const apply = async () => {
    setTrouble(null)
    setProblems([])
    setBusy(true)
    try {
      await read(text ?? '')
    } catch (error) {
      setTrouble((error as Error).message)
    }
    setBusy(false)
  }
  return (
    <div className="stack" style={{ paddingTop: '0.5rem' }}>
      <p className="soft small">
        {texts.help} <SchemaLink />
      </p>
      <Textarea
        label={texts.label}
        rows={18}
        styles={{ input: { fontFamily: 'ui-monospace, monospace', fontSize: '0.875rem' } }}
        value={text ?? JSON.stringify(props.game, null, 1)}
        error={trouble !== null}
        readOnly={props.readOnly}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      {trouble && (
        <div role="alert" className="loss">
          <p>{trouble}</p>
          <ul>
            {problems.slice(0, 20).map(({ path, message }) => (
              <li key={`${path.join('/')} ${message}`}>
                {pathWords(path, texts.whole)}: {message}
              </li>
            ))}
          </ul>
        </div>
      )}
      <div className="row">
        <Button variant="default" disabled={text === null} loading={busy} onClick={() => void apply()}>
          {texts.apply}
        </Button>
        {text !== null && (
          <Button
            variant="subtle"
            onClick={() => {
              setText(null)
              setTrouble(null)
              setProblems([])
            }}
          >
            {texts.back}
          </Button>
        )}
      </div>
    </div>
  )
}
