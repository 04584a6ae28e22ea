import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import { choicesOf, type OwnBeside, type OwnLineUp, type Told } from '../../../../src/model/briefing/ownLineUp.ts'
import type { Match } from '../../../../src/model/scouting/types.ts'
import { type Briefed, requestFor } from '../../../data/briefing.ts'
import type { EventPack } from '../../../data/eventPack.ts'
import { words } from '../../../words/catalogue.ts'
import { percent } from '../../../words/format.ts'
import { askModel } from '../../../worker/client.ts'
import { SideBySide } from '../../tradeoffs/SideBySide.tsx'
import { goalsSaid, losesOf } from './said.ts'
import type { OwnPlan } from './useOwnPlan.ts'

interface Tried {
  own: OwnLineUp
  beside: OwnBeside
}

type Three = [Told, Told, Told]

/** Whoever thinks of another line-up tries it here, beside the computed one. */
export function OwnLineUps(props: { pack: EventPack; match: Match; shown: Briefed; own: OwnPlan }) {
  const { pack, match, shown, own: plan } = props
  const texts = words().briefing
  const { briefing, alliance } = shown
  const request = requestFor(pack, { match, alliance })
  const choices = choicesOf(request)
  const best = briefing.lineUps[0]!.goals
  const marked = Math.max(
    0,
    request.theirs.findIndex(({ id }) => id === briefing.threat.team),
  )
  const [told, setTold] = useState<Three>(
    () =>
      choices.map((each, i) =>
        Math.max(
          0,
          each.findIndex((goals) => goals.join() === best[i]?.join()),
        ),
      ) as Three,
  )
  const [tried, setTried] = useState<Tried[]>([])
  const [busy, setBusy] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const twoMark = told.filter((each) => each === 'marks').length > 1
  const said = (i: number, each: Told) => {
    if (each === 'marks') return texts.standsBefore(briefing.threat.team)
    const goals = goalsSaid(pack.game, choices[i]![each]!)
    return each === 0 ? texts.asSeen(goals) : texts.only(goals)
  }
  const play = async () => {
    const own: OwnLineUp = { told, marked }
    setBusy(true)
    setTrouble(null)
    try {
      const beside = await askModel('ownLineUp', { request, best, own }, { asked: true })
      setTried((before) => [...before.filter((each) => each.own.told.join() !== told.join()), { own, beside }])
    } catch (error) {
      setTrouble(`${texts.ownFailed}: ${(error as Error).message}`)
    } finally {
      setBusy(false)
    }
  }
  const inForce = plan.made?.byHand?.own.told.join() ?? null
  const taken = (own: OwnLineUp, name: string) =>
    inForce === own.told.join() ? (
      texts.isPlan
    ) : (
      <Button
        variant="default"
        size="xs"
        disabled={plan.busy}
        aria-label={texts.takeOwnOf(name)}
        onClick={() => plan.take(own)}
      >
        {texts.takeOwn}
      </Button>
    )
  return (
    <section className="sheet stack no-print" aria-labelledby="own-lineup">
      <h2 id="own-lineup">{texts.own}</h2>
      <p>{texts.ownHow}</p>
      <div className="row brief-own">
        {choices.map((ways, i) => (
          <NativeSelect
            key={request.ours[i]!.id}
            label={texts.ownOf(request.ours[i]!.id)}
            value={String(told[i])}
            data={([...ways.keys(), 'marks'] as Told[]).map((each) => ({ value: String(each), label: said(i, each) }))}
            error={twoMark && told[i] === 'marks' ? texts.ownOneMark : null}
            onChange={({ currentTarget: { value } }) =>
              setTold(told.map((each, k) => (k === i ? (value === 'marks' ? value : Number(value)) : each)) as Three)
            }
          />
        ))}
      </div>
      <div className="row">
        <Button loading={busy} disabled={twoMark} onClick={() => void play()}>
          {texts.playOwn}
        </Button>
        {tried.length > 0 && (
          <Button variant="default" onClick={() => setTried([])}>
            {texts.forgetOwn}
          </Button>
        )}
      </div>
      <div role="status" className="brief-lineups">
        {busy && <p className="visually-hidden">{texts.ownPlaying}</p>}
        {trouble && <p className="loss">{trouble}</p>}
        {tried.length > 0 && (
          <SideBySide
            least={84}
            caption={texts.ownTable}
            first={texts.lineUp}
            columns={[...request.ours.map(({ id }) => id), texts.chance, texts.loses, texts.thePlan]}
            rows={[
              {
                id: 'computed',
                name: texts.computed,
                cells: [
                  ...best.map((goals) => goalsSaid(pack.game, goals)),
                  percent(tried[0]!.beside.best.mean),
                  '',
                  inForce === null ? (
                    texts.isPlan
                  ) : (
                    <Button key="back" variant="default" size="xs" onClick={plan.back} aria-label={texts.ownBack}>
                      {texts.takeOwn}
                    </Button>
                  ),
                ],
              },
              ...tried.map(({ own, beside }, k) => ({
                id: own.told.join(),
                name: texts.ownName(k + 1),
                cells: [
                  ...own.told.map((each, i) => said(i, each)),
                  percent(beside.win.mean),
                  losesOf(beside.loses),
                  taken(own, texts.ownName(k + 1)),
                ],
              })),
            ]}
          />
        )}
      </div>
    </section>
  )
}
