import { Button } from '@mantine/core'
import { useMaking } from '../../../data/forecasts.ts'
import { words } from '../../../words/catalogue.ts'

/** The day's coming matches, forecast in one go: some at a time, so that it can be stopped. */
export function Making({ event }: { event: string }) {
  const texts = words().forecasts
  const { state, start, stop } = useMaking(event)
  return (
    <div className="stack no-print">
      <div className="row">
        {state.at === 'work' ? (
          <Button variant="default" onClick={stop}>
            {texts.stop}
          </Button>
        ) : (
          <Button variant="default" onClick={start}>
            {texts.make}
          </Button>
        )}
      </div>
      <p role="status" className="soft">
        {state.at === 'rest' && texts.makeHow}
        {state.at === 'work' && texts.making(state.done, Math.max(state.all, state.done))}
        {state.at === 'end' &&
          (state.stopped ? texts.stopped(state.done) : state.done > 0 ? texts.made(state.done) : texts.allMade)}
      </p>
      {state.at === 'trouble' && (
        <p role="alert">
          {texts.noMake}: {state.error instanceof Error ? state.error.message : String(state.error)}
        </p>
      )}
    </div>
  )
}
