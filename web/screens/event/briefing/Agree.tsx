import { Button, Textarea } from '@mantine/core'
import { planBodyOf, plansInForce } from '../../../../src/model/briefing/agreed.ts'
import { type Briefed, useAgree } from '../../../data/briefing.ts'
import type { Packed } from '../../../data/eventPack.ts'
import { useSession } from '../../../data/session.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { words } from '../../../words/catalogue.ts'
import { moment, percent, plain, points } from '../../../words/format.ts'
import { nameOfMatch } from '../matchNames.ts'

/** Agrees on a plan with a note, and shows what was agreed for the match and what came of it. */
export function Agree(props: { packed: Packed; made: Briefed }) {
  const { made } = props
  const { pack, kept } = props.packed
  const texts = words().briefing
  const { role } = useSession().data ?? {}
  const agree = useAgree(pack.event.id)
  const note = useTyped(`plan/${pack.event.id}/${made.match}`, { text: '' })
  const before = pack.plans.filter(({ match }) => match === made.match)
  const others = [...plansInForce(pack.plans).values()].filter(({ match }) => match !== made.match)
  const keep = () => {
    const body = planBodyOf(made.briefing, {
      ...{ alliance: made.alliance, note: note.typed.text.trim() },
      byHand: made.byHand !== undefined,
    })
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
      {before.length > 0 && <Kept title={texts.keptPlans} packed={props.packed} plans={before} />}
      {others.length > 0 && <Kept title={texts.earlierPlans} packed={props.packed} plans={others} named />}
    </section>
  )
}

/** Plans with what came of them, the newest first. */
function Kept(props: { title: string; packed: Packed; plans: Packed['pack']['plans']; named?: boolean }) {
  const { packed, plans } = props
  const texts = words().briefing
  return (
    <>
      <h3>{props.title}</h3>
      <ul>
        {plans.toReversed().map(({ id, agreedAt, match, body }) => {
          const result = packed.pack.results.find((each) => each.match === match)
          const theirs = body.alliance === 'red' ? 'blue' : 'red'
          return (
            <li key={id}>
              {props.named && <strong>{nameOfMatch(packed.pack, match)} · </strong>}
              {texts.keptPlan(moment(agreedAt), percent(body.win))}.{' '}
              {body.instead && `${texts.keptOwn(percent(body.instead.own), percent(body.instead.win))} `}
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
