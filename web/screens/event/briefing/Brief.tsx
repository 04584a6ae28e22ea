import { Button } from '@mantine/core'
import { useState } from 'react'
import { plansInForce } from '../../../../src/model/briefing/agreed.ts'
import { changesBetween } from '../../../../src/model/briefing/changed.ts'
import { coachCopy, partnerCopy } from '../../../../src/model/briefing/copies.ts'
import { lastCallOf } from '../../../../src/model/briefing/lastCall.ts'
import type { Alliance, Match } from '../../../../src/model/scouting/types.ts'
import { type Briefed, sidesOf } from '../../../data/briefing.ts'
import type { Packed } from '../../../data/eventPack.ts'
import { Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { listed, moment } from '../../../words/format.ts'
import { matchName } from '../matchNames.ts'
import { allianceName, timeOf } from '../names.ts'
import { Agree } from './Agree.tsx'
import { CoachSheet, JobSheet } from './CoachSheet.tsx'
import { OwnLineUps } from './OwnLineUps.tsx'
import { StrategistSheet } from './StrategistSheet.tsx'
import { changeSaid } from './said.ts'
import { type BriefedState, useBriefed } from './useBriefed.ts'
import { type OwnPlan, useOwnPlan } from './useOwnPlan.ts'

const copies = ['coach', 'partner', 'strategist'] as const
type Copy = (typeof copies)[number]

/** The briefing of one match, made as soon as it is opened. */
export function Brief(props: { packed: Packed; match: Match; alliance: Alliance }) {
  const { packed, match, alliance } = props
  const texts = words().briefing
  const briefed = useBriefed(packed, { match, alliance })
  const [copy, setCopy] = useState<Copy>('coach')
  const { shown, progress } = briefed
  const own = useOwnPlan(packed.pack, { match, alliance, shown })
  if (briefed.error && !shown) return <Trouble title={texts.notMade} error={briefed.error} retry={briefed.again} />
  if (!shown)
    return (
      <p role="status" className="sheet">
        {texts.working} {progress && texts.step(progress.done, progress.all)}
      </p>
    )
  const plan = own.made ?? shown
  return (
    <div className="stack">
      <div role="status" className="no-print brief-live">
        <News packed={packed} briefed={briefed} shown={shown} byHand={own.made !== null} />
        <OwnTaken own={own} />
      </div>
      <div className="row no-print">
        <fieldset className="brief-copies" aria-label={texts.copies}>
          {copies.map((each) => (
            <button key={each} type="button" aria-pressed={each === copy} onClick={() => setCopy(each)}>
              {texts.copyNames[each]}
            </button>
          ))}
        </fieldset>
        <Button variant="default" aria-label={texts.printCopy(texts.copyNames[copy])} onClick={() => window.print()}>
          {texts.print}
        </Button>
      </div>
      <Page packed={packed} match={match} shown={plan} copy={copy} />
      {/* What was tried stays while other copies are looked at; it belongs to the robots that it was tried with. */}
      <div hidden={copy !== 'strategist'}>
        <OwnLineUps key={shown.from} pack={packed.pack} match={match} shown={shown} own={own} />
      </div>
      <Agree packed={packed} made={plan} />
    </div>
  )
}

/** What arrived since, what it would change, and the offer to take it. */
function News(props: { packed: Packed; briefed: BriefedState; shown: Briefed; byHand: boolean }) {
  const { packed, briefed, shown } = props
  const texts = words().briefing
  const { next, looking, behind, take, error, again } = briefed
  // Of the newest that is here: what is read may lack more, which the box below says.
  const arrived = behind && behind.records > 0 && !next ? texts.newsRecords(behind.records) : texts.news
  const changes = next ? changesBetween(shown.briefing, next.briefing) : []
  return (
    <>
      {looking && <p className="soft">{`${arrived} ${texts.renewing}`}</p>}
      {!looking && !next && error !== null && (
        <p className="row">
          {texts.news} {texts.notMade}.
          <Button variant="default" size="xs" onClick={again}>
            {words().shell.again}
          </Button>
        </p>
      )}
      {next && (
        <div className="sheet stack brief-news">
          <p>
            <strong>{changes.length === 0 ? texts.newsSame : texts.newsChanges}</strong>
          </p>
          {changes.length > 0 && (
            <ul>
              {changes.map((change) => (
                <li key={JSON.stringify(change)}>{changeSaid(packed.pack.game, change)}</li>
              ))}
            </ul>
          )}
          {props.byHand && <p>{texts.ownAnew}</p>}
          <div>
            <Button onClick={take}>{texts.renew}</Button>
          </div>
        </div>
      )}
    </>
  )
}

/** That the copies show a line-up of our own, and the way back; or how far that is. */
function OwnTaken({ own }: { own: OwnPlan }) {
  const texts = words().briefing
  return (
    <>
      {own.busy && (
        <p className="soft">
          {texts.ownWorking} {own.progress && texts.step(own.progress.done, own.progress.all)}
        </p>
      )}
      {own.error && (
        <p className="loss">
          {texts.ownNotMade}: {own.error.message}
        </p>
      )}
      {own.made && (
        <p className="row brief-kept">
          <strong>{texts.ownTaken}</strong>
          <Button variant="default" size="xs" onClick={own.back}>
            {texts.ownBack}
          </Button>
        </p>
      )}
    </>
  )
}

function Page(props: { packed: Packed; match: Match; shown: Briefed; copy: Copy }) {
  const { match, shown, copy } = props
  const { pack } = props.packed
  const { briefing, alliance, neverSeen } = shown
  const texts = words().briefing
  const [, theirs] = sidesOf(match, alliance)
  const { matches, results, plans, endings, own } = pack
  const inForce = plansInForce(plans).get(match.id)
  const last = lastCallOf({ matches, results, plans, endings, own, before: match.id })
  return (
    <article className={`brief-page brief-${copy}`} aria-label={texts.copyNames[copy]}>
      <header>
        <h2>
          {matchName(match)} · {allianceName(alliance)}
        </h2>
        <p>
          {[timeOf(match, pack.event.startsOn), texts.against(listed(theirs.map(({ team }) => team)))]
            .filter(Boolean)
            .join(' · ')}
        </p>
      </header>
      {copy === 'coach' && <CoachSheet pack={pack} copy={coachCopy(briefing, last)} note={inForce?.body.note ?? ''} />}
      {copy === 'partner' && <JobSheet game={pack.game} copy={partnerCopy(briefing)} own={[]} />}
      {copy === 'strategist' && <StrategistSheet pack={pack} briefing={briefing} byHand={shown.byHand !== undefined} />}
      <footer>
        {texts.copyNames[copy]} · {texts.asOf(moment(shown.madeAt), shown.records)} {shown.here && texts.madeHere}{' '}
        {copy === 'strategist' && neverSeen.length > 0 && texts.neverSeen(listed(neverSeen))}
      </footer>
    </article>
  )
}
