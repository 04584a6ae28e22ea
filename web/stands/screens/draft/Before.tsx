import { useState } from 'react'
import { Choice } from '../../parts/Choice.tsx'
import { redWall } from '../../parts/choices.ts'
import { Field } from '../../parts/Field.tsx'
import { FieldDrawing, type Mark, marksOf } from '../../parts/FieldDrawing.tsx'
import { Screen } from '../../parts/Screen.tsx'
import { started } from '../../record/clock.ts'
import { formOf } from '../../record/form.ts'
import { nearest } from '../../record/ground.ts'
import { steadyNow } from '../../record/steady.ts'
import type { Desk } from '../../record/useDraft.ts'
import { useWords } from '../../words/catalogue.ts'
import { useView } from './view.ts'

/** How far beside a start a finger may touch (m). */
const reach = 2

/** What is known before the match, and its start. */
export function Before({ desk, title }: { desk: Desk; title: string }) {
  const texts = useWords().before
  const { draft, game, change, say } = desk
  const { about, said } = draft
  const form = formOf(game, about)
  const begin = () => {
    const clock = about.mode === 'counts' ? draft.clock : started(draft.clock, steadyNow())
    change({ step: 'running', clock })
  }
  return (
    <Screen title={title}>
      {form.starts.length > 0 && <Starts desk={desk} />}
      {about.match !== null && <KnownBy desk={desk} />}
      {about.subject === 'robot' && (
        <details>
          <summary>{texts.routine}</summary>
          <Field
            label={texts.routine}
            value={said.routine ?? ''}
            maxLength={100}
            change={(routine) => say({ routine })}
          />
        </details>
      )}
      {about.subject === 'robot' && about.match !== null && (
        <button
          type="button"
          onClick={() => {
            say({ absent: true })
            change({ step: 'check' })
          }}
        >
          {texts.noShow}
        </button>
      )}
      <div className="foot">
        <p className="soft small">{about.mode === 'timeline' && texts.beginHelp}</p>
        <button type="button" className="strong huge" onClick={begin}>
          {about.mode === 'counts' ? texts.count : texts.begin}
        </button>
      </div>
    </Screen>
  )
}

function Starts({ desk }: { desk: Desk }) {
  const texts = useWords()
  const { draft, game, say } = desk
  const view = useView(draft.about)
  const chosen = draft.said.startSpot
  const marks: Mark[] = [
    ...marksOf(game),
    ...game.starts.map(
      ({ id, at }, index): Mark => ({ id, at, sign: `${index + 1}`, shape: 'start', strong: id === chosen }),
    ),
  ]
  return (
    <>
      <Choice
        label={texts.before.side}
        value={view.redWall}
        choose={redWall.choose}
        options={(['left', 'right'] as const).map((value) => ({ value, name: texts.before[value] }))}
      />
      <FieldDrawing
        game={game}
        view={view}
        marks={marks}
        touched={(at) => {
          const start = nearest(game.starts, at, reach)
          if (start) say({ startSpot: start.id })
        }}
      />
      <Choice<string | undefined>
        label={`${texts.before.start} ${texts.before.startHelp}`}
        value={chosen}
        choose={(startSpot) => say({ startSpot })}
        options={[
          ...game.starts.map(({ id, name }, index) => ({ value: id, name: `${index + 1} ${name}` })),
          { value: undefined, name: texts.before.notSeen },
        ]}
      />
    </>
  )
}

/** A robot known by its place follows a corrected schedule; one known by its number stays who it is. */
function KnownBy({ desk }: { desk: Desk }) {
  const texts = useWords()
  const { about } = desk.draft
  const [other, setOther] = useState<string | null>(null)
  const become = (patch: Partial<typeof about>) => desk.change({ about: { ...about, ...patch } })
  return (
    <>
      <Choice
        label={texts.before.known}
        value={about.identifiedBy}
        choose={(identifiedBy) => become({ identifiedBy })}
        options={(['position', 'number'] as const).map((value) => ({ value, name: texts.before[value] }))}
      />
      {other === null ? (
        <button type="button" onClick={() => setOther('')}>
          {texts.before.wrong}
        </button>
      ) : (
        <Field
          label={texts.choose.team}
          inputMode="numeric"
          value={other}
          maxLength={20}
          error={other.trim() === '' ? texts.choose.teamMissing : null}
          change={(team) => {
            setOther(team)
            if (team.trim() !== '') become({ team: team.trim(), identifiedBy: 'number' })
          }}
        />
      )}
    </>
  )
}
