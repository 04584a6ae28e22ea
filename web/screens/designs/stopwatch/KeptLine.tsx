import { Button } from '@mantine/core'
import { words } from '../../../words/catalogue.ts'
import type { useTimes } from './useTimes.ts'

/** Where the times are: on this phone only, or on the server. */
export function KeptLine(props: ReturnType<typeof useTimes>) {
  const { trials, waiting, sending, remembered } = props
  const texts = words().stopwatch.kept
  const sent = waiting === 0
  return (
    <div className={sent ? 'kept sent' : 'kept here'} data-testid="kept">
      <p role="status">
        <span aria-hidden="true">{sent ? '✓ ' : '◯ '}</span>
        {trials.length === 0 && sent ? texts.nothing : sent ? texts.all : texts.some(waiting)}{' '}
        {!sent && sending.state === 'sending' && texts.sending}
        {!sent && sending.state === 'silent' && texts.silent}
        {!sent && sending.state === 'refused' && texts.refused(sending.why)}
      </p>
      {!remembered && <p className="loss">{texts.notKept}</p>}
      {!sent && (
        <Button size="compact-md" variant="default" onClick={() => void props.send()}>
          {texts.try}
        </Button>
      )}
    </div>
  )
}
