import { Button, Textarea } from '@mantine/core'
import { useState } from 'react'
import type { Game } from '../../../src/model/documents/types.ts'
import { readDocument } from '../documents/ImportFile.tsx'

/** The whole game as text, for what has no form yet: obstacles, sets, bonuses, ranking. The drawing follows. */
export function GameText(props: { game: Game; readOnly: boolean; onApply(game: Game): void }) {
  const [text, setText] = useState<string | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const apply = () => {
    try {
      props.onApply(readDocument('game', text ?? '') as Game)
      setText(null)
      setTrouble(null)
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  return (
    <details className="fold">
      <summary>The whole game as text: obstacles, new places, sets, bonuses, ranking</summary>
      <div className="stack" style={{ paddingTop: '0.5rem' }}>
        <Textarea
          label="Game, JSON"
          description="Metres and seconds; x along the length from the own wall, y along the width"
          rows={18}
          styles={{ input: { fontFamily: 'ui-monospace, monospace', fontSize: '0.875rem' } }}
          value={text ?? JSON.stringify(props.game, null, 1)}
          error={trouble}
          readOnly={props.readOnly}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        <div className="row">
          <Button variant="default" disabled={text === null} onClick={apply}>
            Take it over
          </Button>
          {text !== null && (
            <Button variant="subtle" onClick={() => setText(null)}>
              Back to the forms
            </Button>
          )}
        </div>
      </div>
    </details>
  )
}
