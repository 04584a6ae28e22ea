import { Button } from '@mantine/core'

/** The last row of a note in an event's document: keeps it, takes that back, and says why it could not be kept. */
export function KeepRow(props: {
  /** What the button says, what is said once it is kept, and how that is taken back. */
  texts: { keep: string; kept: string; undo: string }
  disabled: boolean
  saving: boolean
  onKeep(): void
  /** Null: nothing has been kept yet. */
  onUndo: (() => void) | null
  trouble: string | null
}) {
  const { texts } = props
  return (
    <>
      <div className="row no-print">
        <Button disabled={props.disabled} loading={props.saving} onClick={props.onKeep}>
          {texts.keep}
        </Button>
        {props.onUndo && (
          <span role="status">
            {texts.kept}{' '}
            <button type="button" className="opens" onClick={props.onUndo}>
              {texts.undo}
            </button>
          </span>
        )}
      </div>
      {props.trouble && (
        <p role="alert" className="loss">
          {props.trouble}
        </p>
      )}
    </>
  )
}
