import { useState } from 'react'
import { saveDraft } from '../../data/outbox.ts'
import { deviceOf } from '../../data/session.ts'
import { Ask } from '../../parts/Ask.tsx'
import { Choice } from '../../parts/Choice.tsx'
import { Field } from '../../parts/Field.tsx'
import { useStanding } from '../../parts/means.tsx'
import { goInstead } from '../../parts/place.ts'
import { Screen } from '../../parts/Screen.tsx'
import { Stepper } from '../../parts/Stepper.tsx'
import { discardDraft } from '../../record/begin.ts'
import { stopped } from '../../record/clock.ts'
import type { Said } from '../../record/draft.ts'
import { type Form, formOf } from '../../record/form.ts'
import { steadyNow } from '../../record/steady.ts'
import type { Desk } from '../../record/useDraft.ts'
import { useWords } from '../../words/catalogue.ts'
import { Counted } from './Counted.tsx'
import { Repeated } from './Repeated.tsx'

/** What was recorded, in two seconds' reading, and what can only be said at the end. */
export function Check({ desk, title }: { desk: Desk; title: string }) {
  const texts = useWords()
  const { database, sender } = useStanding()
  const { draft, game, say, change } = desk
  const { said, about } = draft
  const [asked, setAsked] = useState(false)
  const [tried, setTried] = useState(false)
  const [failed, setFailed] = useState(false)
  const [wrong, setWrong] = useState<readonly string[]>([])
  const reasonMissing = draft.replaces !== undefined && (draft.reason ?? '').trim() === ''

  const save = async () => {
    setTried(true)
    if (reasonMissing || wrong.length > 0) {
      document.querySelector<HTMLElement>('[aria-invalid]')?.focus()
      return
    }
    try {
      // The record is made of what is in the phone's database: it has to have every tap that is on the screen.
      if (!(await desk.kept())) return setFailed(true)
      const clock = stopped(draft.clock, steadyNow())
      await saveDraft(database, { ...draft, clock }, { device: await deviceOf(database), now: Date.now() })
      sender.wake()
      goInstead({ screen: 'home' })
    } catch {
      setFailed(true)
    }
  }
  const discard = async () => {
    await discardDraft(database, draft.id)
    goInstead({ screen: 'home' })
  }

  return (
    <Screen title={title}>
      <Repeated desk={desk} />
      {draft.replaces !== undefined && (
        <Field
          label={texts.check.reason}
          value={draft.reason ?? ''}
          maxLength={500}
          error={tried && reasonMissing ? texts.check.reasonMissing : null}
          change={(reason) => change({ reason })}
        />
      )}
      {!said.absent && (
        <Asked
          form={formOf(game, about)}
          said={said}
          say={say}
          counts={about.mode === 'counts'}
          wrong={(field, is) => setWrong((all) => [...all.filter((each) => each !== field), ...(is ? [field] : [])])}
        />
      )}
      <Field label={texts.check.note} value={said.note} maxLength={2000} change={(note) => say({ note })} />
      {(failed || desk.notKept) && (
        <p className="wrong" role="alert">
          {texts.check.notSaved}
        </p>
      )}
      <div className="line">
        <button
          type="button"
          onClick={() => {
            if (said.absent) say({ absent: undefined })
            change({ step: said.absent ? 'before' : 'running' })
          }}
        >
          {texts.check.back}
        </button>
        <button type="button" onClick={() => setAsked(true)}>
          {texts.check.discard}
        </button>
      </div>
      <div className="foot">
        <button type="button" className="strong huge" onClick={save}>
          {texts.check.save}
        </button>
      </div>
      {asked && (
        <Ask
          question={texts.check.discardSure}
          yes={texts.check.discardYes}
          sure={discard}
          not={() => setAsked(false)}
        />
      )}
    </Screen>
  )
}

function Asked(props: {
  form: Form
  said: Said
  say(said: Partial<Said>): void
  counts: boolean
  wrong(field: string, is: boolean): void
}) {
  const { form, said, say } = props
  const texts = useWords().check
  const finishes = form.finishes.map(({ id, name }) => ({ value: id as string | null, name }))
  const unknown = { value: undefined, name: texts.unknown }
  return (
    <>
      {form.finishes.length > 0 && (
        <>
          <Choice<string | null | undefined>
            label={texts.finish}
            value={said.attempted}
            // What was tried was mostly reached; what was not, is said below.
            choose={(attempted) => say({ attempted, achieved: attempted })}
            options={[...finishes, { value: null, name: texts.none }, unknown]}
          />
          {said.attempted && (
            <Choice<string | null | undefined>
              label={texts.reached}
              value={said.achieved}
              choose={(achieved) => say({ achieved })}
              options={[...finishes, { value: null, name: texts.none }]}
            />
          )}
        </>
      )}
      {form.leaves && (
        <Choice<boolean | undefined>
          label={texts.left}
          value={said.leftStart}
          choose={(leftStart) => say({ leftStart })}
          options={[{ value: true, name: texts.yes }, { value: false, name: texts.no }, unknown]}
        />
      )}
      {props.counts && form.leaves && <Counted said={said} say={say} wrong={props.wrong} />}
      <div className="line">
        <Stepper label={texts.minor} value={said.minor} change={(minor) => say({ minor })} />
        <Stepper label={texts.major} value={said.major} change={(major) => say({ major })} />
      </div>
    </>
  )
}
