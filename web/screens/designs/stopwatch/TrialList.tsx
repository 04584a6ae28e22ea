import { Button, NativeSelect, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { TimedTrial } from '../../../../src/model/documents/timing.ts'
import { farOff } from '../../../../src/model/samples/index.ts'
import { words } from '../../../words/catalogue.ts'
import { decimal } from '../../../words/decimal.ts'
import { moment } from '../../../words/format.ts'

const hundredths = (seconds: number) => words().stopwatch.time(decimal(seconds, 2))

/** Every time taken, newest first. One that lies far off is pointed out; only a person strikes it, with a reason. */
export function TrialList(props: { trials: readonly TimedTrial[]; onStrike(id: string, reason: string | null): void }) {
  const { trials } = props
  const texts = words().stopwatch.list
  const [open, setOpen] = useState<string | null>(null)
  const counting = trials.filter(({ struck }) => struck === null)
  const far = farOff(counting.map(({ seconds }) => seconds))
  const doubtful = new Set(far?.indices.map((index) => counting[index]!.id))
  const say = (trial: TimedTrial) =>
    far &&
    texts.far({ time: hundredths(trial.seconds), from: hundredths(Math.max(0, far.from)), to: hundredths(far.to) })
  return (
    <section className="stack" aria-labelledby="trials-title">
      <h2 id="trials-title">{texts.title}</h2>
      {trials.length === 0 && <p className="soft">{texts.none}</p>}
      <ol className="trials" reversed>
        {trials
          .map((trial, index) => ({ trial, number: index + 1 }))
          .reverse()
          .map(({ trial, number }) => {
            const time = hundredths(trial.seconds)
            return (
              <li key={trial.id} className={trial.struck === null ? undefined : 'struck'} data-testid="trial">
                <span className="trial-number soft">{number}</span>
                <span className="trial-time numeral">{trial.struck === null ? time : <s>{time}</s>}</span>
                <span className="soft small">{moment(trial.at)}</span>
                {trial.struck !== null ? (
                  <Button
                    size="compact-md"
                    variant="subtle"
                    aria-label={texts.backOne(number, time)}
                    onClick={() => props.onStrike(trial.id, null)}
                  >
                    {texts.back}
                  </Button>
                ) : (
                  <Button
                    size="compact-md"
                    variant="subtle"
                    aria-label={texts.strikeOne(number, time)}
                    aria-expanded={open === trial.id}
                    onClick={() => setOpen(open === trial.id ? null : trial.id)}
                  >
                    {texts.strike}
                  </Button>
                )}
                {trial.struck !== null && <p className="trial-note small">{texts.struck(trial.struck)}</p>}
                {doubtful.has(trial.id) && <p className="trial-note far">{say(trial)}</p>}
                {open === trial.id && trial.struck === null && (
                  <Reason
                    onLeave={() => setOpen(null)}
                    onReason={(reason) => {
                      setOpen(null)
                      props.onStrike(trial.id, reason)
                    }}
                  />
                )}
              </li>
            )
          })}
      </ol>
      {doubtful.size > 0 && <p className="soft small">{texts.rule}</p>}
    </section>
  )
}

function Reason(props: { onReason(reason: string): void; onLeave(): void }) {
  const texts = words().stopwatch.list
  const [chosen, setChosen] = useState(texts.reasons[0]!)
  const [own, setOwn] = useState('')
  const [trouble, setTrouble] = useState<string | null>(null)
  const other = chosen === ''
  const strike = () => {
    const reason = other ? own.trim() : chosen
    if (reason === '') setTrouble(texts.noReason)
    else props.onReason(reason.slice(0, 200))
  }
  return (
    <div className="trial-note stack">
      <NativeSelect
        label={texts.reason}
        value={chosen}
        data={[...texts.reasons.map((reason) => ({ value: reason, label: reason })), { value: '', label: texts.other }]}
        onChange={(event) => setChosen(event.currentTarget.value)}
      />
      {other && (
        <TextInput
          label={texts.own}
          value={own}
          maxLength={200}
          error={trouble}
          onChange={(event) => setOwn(event.currentTarget.value)}
        />
      )}
      <div className="row">
        <Button onClick={strike}>{texts.confirm}</Button>
        <Button variant="default" onClick={props.onLeave}>
          {texts.leave}
        </Button>
      </div>
    </div>
  )
}
