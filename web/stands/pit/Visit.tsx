import { useState } from 'react'
import type { Photo } from '../../../src/model/scouting/types.ts'
import type { Me } from '../data/session.ts'
import type { Pack } from '../data/shapes.ts'
import { Field } from '../parts/Field.tsx'
import { useStanding } from '../parts/means.tsx'
import { useMoreWords } from '../words/more.ts'
import { freshVisit, readClaims, type TypedVisit, type VisitProblem } from './claims.ts'
import { InEvent, Kept } from './InEvent.tsx'
import { keepRow } from './keep.ts'
import { Photos } from './Photos.tsx'
import { noTeam, TeamChoice, teamOf } from './TeamChoice.tsx'
import { useForm } from './useForm.ts'

/** What a team says of itself, with photos: kept as claimed. */
export default function Visit() {
  const { pit } = useMoreWords()
  return <InEvent title={pit.visit.title}>{({ pack, me }) => <Form pack={pack} me={me} />}</InEvent>
}

const fresh = { team: noTeam, visit: freshVisit }
const noPhotos: readonly Photo[] = []

function Form({ pack, me }: { pack: Pack; me: Me }) {
  const { pit } = useMoreWords()
  const texts = pit.visit
  const { database, sender } = useStanding()
  const form = useForm(`visit/${pack.event.id}`, fresh)
  // By themselves: they are not written anew with every letter.
  const taken = useForm(`visit/${pack.event.id}/photos`, noPhotos)
  const [problems, setProblems] = useState<{ [field: string]: VisitProblem }>({})
  const [wanting, setWanting] = useState<'team' | 'anything' | null>(null)
  const [done, setDone] = useState(false)
  if (!form || !taken) return null
  const [typed, type] = form
  const [photos, setPhotos] = taken
  const { team, visit } = typed
  const { goals, finishes } = pack.game.body

  const change = (next: Partial<TypedVisit>) => type({ team, visit: { ...visit, ...next } })
  const say = (field: string): string | null => {
    const problem = problems[field]
    if (!problem) return null
    return problem.kind === 'notANumber' ? texts.notANumber(problem.got) : texts.tooMuch(problem.most)
  }
  const keep = async () => {
    const about = teamOf(team)
    const read = readClaims(visit)
    setProblems('problems' in read ? read.problems : {})
    const empty = 'claims' in read && Object.keys(read.claims).length === 0 && !read.note && photos.length === 0
    setWanting(about === null ? 'team' : empty ? 'anything' : null)
    if (about === null || empty || 'problems' in read) return
    const of = { event: pack.event.id, scout: me.id }
    // Photos first: a visit that names one that is not there yet would look broken.
    for (const photo of photos) await keepRow(database, { ...of, kind: 'photo', body: photo })
    const at = new Date().toISOString()
    const body = { team: about, at, ...read, photos: photos.map(({ id }) => id) }
    await keepRow(database, { ...of, kind: 'visit', body })
    sender.wake()
    type(fresh)
    setPhotos(noPhotos)
    setDone(true)
  }
  if (done) return <Kept again={() => setDone(false)} />
  return (
    <>
      <p>{texts.intro}</p>
      <p className="notice">{texts.caution}</p>
      <TeamChoice
        pack={pack}
        value={team}
        missing={wanting === 'team'}
        choose={(next) => type({ team: next, visit })}
      />
      {goals.map(({ id, name }) => (
        <Field
          key={id}
          label={texts.goal(name)}
          inputMode="decimal"
          value={visit.goals[id] ?? ''}
          error={say(`goal ${id}`)}
          change={(text) => change({ goals: { ...visit.goals, [id]: text } })}
        />
      ))}
      <Field
        label={texts.cycle}
        inputMode="decimal"
        value={visit.cycle}
        error={say('cycle')}
        change={(cycle) => change({ cycle })}
      />
      <div className="field">
        <label htmlFor="finish">{texts.finish}</label>
        <select id="finish" value={visit.finish} onChange={(event) => change({ finish: event.currentTarget.value })}>
          <option value="">{texts.unsaid}</option>
          {finishes.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <Field label={texts.routines} value={visit.routines} change={(routines) => change({ routines })} />
      <Field label={texts.size} value={visit.size} maxLength={200} change={(size) => change({ size })} />
      <Field
        label={texts.mass}
        inputMode="decimal"
        value={visit.mass}
        error={say('mass')}
        change={(mass) => change({ mass })}
      />
      <Field label={pit.note} value={visit.note} maxLength={2000} change={(note) => change({ note })} />
      <Photos photos={photos} change={setPhotos} />
      {wanting === 'anything' && (
        <p role="alert" className="wrong">
          {texts.empty}
        </p>
      )}
      <button type="button" className="strong tall" onClick={() => void keep()}>
        {pit.keep}
      </button>
    </>
  )
}
