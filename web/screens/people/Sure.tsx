import { Button } from '@mantine/core'
import { words } from '../../words/catalogue.ts'

/** Asks once more, in place, and says what it would mean. */
export function Sure(props: { question: string; yes: string; onYes(): void; onNo(): void }) {
  return (
    <div className="stack" role="group">
      <p>{props.question}</p>
      <div className="row">
        <Button onClick={props.onYes}>{props.yes}</Button>
        <Button variant="default" onClick={props.onNo}>
          {words().people.not}
        </Button>
      </div>
    </div>
  )
}
