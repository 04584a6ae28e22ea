import { Button, Textarea } from '@mantine/core'
import { planBodyOf } from '../../../../src/model/briefing/agreed.ts'
import { type Briefed, useAgree } from '../../../data/briefing.ts'
import type { Packed } from '../../../data/eventPack.ts'
import { useSession } from '../../../data/session.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { words } from '../../../words/catalogue.ts'
import { moment, percent, plain, points } from '../../../words/format.ts'

/** Agrees on a plan with a note, and shows what was agreed for the match and what came of it. */
export function Agree(props: { packed: Packed; made: Briefed }) {
  const { made } = props
  const { pack, kept } = props.packed
  const texts = words().briefing
  const { role } = useSession().data ?? {}
  const agree = useAgree(pack.event.id)
  const note = useTyped(`plan/${pack.event.id}/${made.match}`, { text: '' })
  const before = pack.plans.filter(({ match }) => match === made.match)
  const keep = () => {
    const body = planBodyOf(made.briefing, { alliance: made.alliance, note: note.typed.text.trim() })
    agree.mutate({ match: made.match, from: made.from, body }, { onSuccess: note.forget })
  }
  return (
    <section className="sheet stack no-print" aria-labelledby="brief-agree">
      <h2 id="brief-agree">{texts.agree}</h2>
      {(role === 'lead' || role === 'driveTeam') && (
        <>
          <p className="soft">{texts.agreeHow}</p>
          <Textarea
            label={texts.note}
            description={texts.noteHelp}
            maxLength={2000}
            autosize
            minRows={2}
            value={note.typed.text}
            onChange={(change) => note.type({ text: change.currentTarget.value })}
          />
          {kept && <p className="soft">{texts.offlineAgree}</p>}
          <div className="row">
            <Button disabled={kept} loading={agree.isPending} onClick={keep}>
              {texts.agree}
            </Button>
            {agree.isSuccess && <span role="status">{texts.agreed}</span>}
          </div>
          {agree.error && (
            <p role="alert" className="loss">
              {texts.notAgreed}: {agree.error.message}
            </p>
          )}
        </>
      )}
      {before.length > 0 && <Kept packed={props.packed} plans={before} />}
    </section>
  )
}

function Kept({ packed, plans }: { packed: Packed; plans: Packed['pack']['plans'] }) {
  const texts = words().briefing
  return (
    <>
      <h3>{texts.keptPlans}</h3>
      <ul>
        {plans.toReversed().map(({ id, agreedAt, match, body }) => {
          const result = packed.pack.results.find((each) => each.match === match)
          const theirs = body.alliance === 'red' ? 'blue' : 'red'
          return (
            <li key={id}>
              {texts.keptPlan(moment(agreedAt), percent(body.win))}.{' '}
              {result
                ? texts.came(
                    plain(result[body.alliance].points.total, 1),
                    plain(result[theirs].points.total, 1),
                    points(body.scores.ours),
                    points(body.scores.theirs),
                  )
                : texts.notPlayed}{' '}
              {body.note !== '' && texts.keptNote(body.note)}
            </li>
          )
        })}
      </ul>
    </>
  )
}
