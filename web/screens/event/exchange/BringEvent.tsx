import { Button } from '@mantine/core'
import { useRef } from 'react'
import { Link } from 'wouter'
import { Loading } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { Refused } from './Refused.tsx'
import { isNothing, Report } from './Report.tsx'
import { type Bringing, useBring } from './useBring.ts'

/** Brings an event's file in: what it would change is shown first. */
export function BringEvent() {
  const texts = words().exchange
  const { bringing, look, apply, leave } = useBring()
  const input = useRef<HTMLInputElement>(null)
  const busy = bringing.state === 'busy'
  return (
    <section className="sheet stack" aria-labelledby="exchange-in">
      <h2 id="exchange-in">{texts.bring}</h2>
      <p>{texts.bringHelp}</p>
      <div>
        <input
          ref={input}
          type="file"
          accept=".json,.zip,application/json,application/zip"
          aria-label={texts.input}
          className="visually-hidden"
          tabIndex={-1}
          onChange={(event) => {
            const file = event.currentTarget.files?.[0]
            event.currentTarget.value = ''
            if (file) void look(file)
          }}
        />
        <Button variant="default" disabled={busy} onClick={() => input.current?.click()}>
          {texts.choose}
        </Button>
      </div>
      <State bringing={bringing} apply={apply} again={look} leave={leave} />
    </section>
  )
}

function State(props: {
  bringing: Bringing
  apply(file: File): Promise<void>
  again(file: File): Promise<void>
  leave(): void
}) {
  const { bringing, apply, again, leave } = props
  const texts = words().exchange
  switch (bringing.state) {
    case 'none':
      return null
    case 'busy':
      return (
        <Loading what={bringing.applying ? texts.applying(bringing.file.name) : texts.looking(bringing.file.name)} />
      )
    case 'refused':
      return (
        <div className="stack">
          <Refused name={bringing.file.name} refused={bringing.refused} />
          <div className="row">
            <Button
              variant="default"
              onClick={() => void (bringing.applying ? apply(bringing.file) : again(bringing.file))}
            >
              {words().shell.again}
            </Button>
          </div>
        </div>
      )
    case 'looked':
    case 'done': {
      const { file, report, state } = bringing
      const nothing = isNothing(report)
      return (
        <div className="stack">
          <div role="status">
            <h3>{state === 'done' ? texts.brought(report.event.name) : texts.would(file.name, report.event.name)}</h3>
          </div>
          <Report report={report} done={state === 'done'} />
          {state === 'looked' && !nothing && <p className="soft">{texts.stays}</p>}
          <div className="row">
            {state === 'looked' && !nothing && <Button onClick={() => void apply(file)}>{texts.apply}</Button>}
            {state === 'looked' && (
              <Button variant="default" onClick={leave}>
                {nothing ? texts.close : texts.leave}
              </Button>
            )}
            {state === 'done' && <Link href={`/event/${report.event.id}`}>{texts.open(report.event.name)}</Link>}
          </div>
        </div>
      )
    }
  }
}
