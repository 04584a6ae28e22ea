import { Button } from '@mantine/core'
import { saveButton } from '../../shell/useShortcuts.ts'
import { words } from '../../words/catalogue.ts'

/** Where something waits for a save: why, and a button that presses the one above, which may be screens away. */
export function SaveHere(props: { why: string }) {
  return (
    <div className="row">
      <span className="soft small">{props.why}</span>
      <Button size="compact-md" variant="default" onClick={(event) => saveButton(event.currentTarget)?.click()}>
        {words().documents.save.here}
      </Button>
    </div>
  )
}
