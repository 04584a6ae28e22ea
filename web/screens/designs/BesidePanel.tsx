import { NativeSelect } from '@mantine/core'
import { memo, useMemo, useState } from 'react'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { CycleStrip } from '../../charts/CycleStrip.tsx'
import { Measured } from '../../charts/Measured.tsx'
import { stripLayout } from '../../charts/stripLayout.ts'
import { assembleOption, firstOption } from '../../data/assemble.ts'
import { type Stored, useAllStored, useList } from '../../data/documents.ts'
import { CameAbout } from '../../shell/CameAbout.tsx'
import { Loading } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { useModel } from '../../worker/useModel.ts'
import { pointsWords, timeWords } from './besideWords.ts'
import { type Cycle, sameTrip, shownLegs, type View } from './cycle.ts'
import { explainBesidePoints, explainBesideTime } from './explain.ts'
import { stripLegs } from './stripLegs.ts'
import type { Live } from './useLive.ts'
import { useWaysToPlay } from './useWaysToPlay.ts'

interface Mine {
  game: Game
  option: Option
  live: Live
  cycle: Cycle
  view: View
  /** What this design's numbers come from. */
  source: string
}

/** Another design's strip under this one's, on the same time scale, and what they differ by. */
export const BesidePanel = memo(function BesidePanel(props: Mine & { design: string }) {
  const texts = words().strip.beside
  const list = useList('design')
  const all = useAllStored('design', list.data ?? [])
  const others = (all.data ?? []).filter(({ id, body }) => id !== props.design && body.game === props.game.id)
  const [chosen, setChosen] = useState('')
  const other = others.find(({ id }) => id === chosen)
  return (
    <section className="sheet stack" aria-labelledby="beside-title">
      <h2 id="beside-title">{texts.title}</h2>
      {all.data && others.length === 0 ? (
        <p className="soft">{texts.alone}</p>
      ) : (
        <div className="row choices">
          <NativeSelect
            label={texts.choose}
            value={chosen}
            data={[
              { value: '', label: texts.none },
              ...others.map(({ id, body }) => ({ value: id, label: body.robot.name })),
            ]}
            onChange={(event) => setChosen(event.currentTarget.value)}
          />
        </div>
      )}
      {other && <Beside key={other.id} {...props} other={other} />}
    </section>
  )
})

function Beside(props: Mine & { other: Stored<'design'> }) {
  const { game, option, other } = props
  const texts = words().strip.beside
  const ways = useWaysToPlay(other.id)
  const [wayId, setWayId] = useState<string | null>(null)
  const robot = other.body.robot
  const known = ways.data ?? []
  const way =
    known.find(({ id }) => id === wayId) ??
    known.find(({ body }) => body.option.finish.mode === option.finish.mode) ??
    known[0]
  const played = useMemo(() => (way ? assembleOption(way.body, robot) : firstOption(game, robot)), [way, robot, game])
  if (!ways.data) return <Loading what={words().designs.screen.what} />
  return (
    <>
      {known.length > 0 && (
        <div className="row choices">
          <NativeSelect
            label={texts.way}
            value={way?.id}
            data={known.map(({ id, name }) => ({ value: id, label: name }))}
            onChange={(event) => setWayId(event.currentTarget.value)}
          />
        </div>
      )}
      <Strips
        {...props}
        played={played}
        from={words().designs.screen.source(robot.name, other.revision, false, game.name)}
      />
    </>
  )
}

function Strips(props: Mine & { played: Option; from: string }) {
  const { game, option, live, cycle, view, played } = props
  const source = `${props.source} ${props.from}`
  const texts = words().strip.beside
  const name = played.robot.name
  const trip = useMemo(() => sameTrip(game, played, cycle), [game, played, cycle])
  const legs = useMemo(() => {
    const able = trip && (view.show !== 'finish' || played.robot.finish[view.finish])
    return able ? shownLegs(game, trip, view) : []
  }, [game, trip, view, played])
  const requests = useMemo(() => legs.map(({ request }) => request), [legs])
  const reports = useModel(
    'legs',
    useMemo(
      () => (requests.length > 0 ? { game, robot: played.robot, legs: requests } : null),
      [requests, game, played],
    ),
  )
  const plan = useModel(
    'quick',
    useMemo(() => ({ game, option: played }), [game, played]),
  )
  const mine = useMemo(() => stripLayout(stripLegs(live.legs, option.robot, [])), [live.legs, option.robot])
  const fresh = reports.data && !reports.isPlaceholderData && reports.data.length === legs.length
  const other = useMemo(() => {
    const known = fresh ? legs.map((leg, index) => ({ leg, report: reports.data![index]!, robot: played.robot })) : []
    return stripLayout(stripLegs(known, played.robot, []))
  }, [fresh, legs, reports.data, played])
  const both = [
    { name: option.robot.name, sections: mine.sections },
    { name, sections: other.sections },
  ] as const
  const until = Math.max(mine.end, other.end)
  const failed = reports.error ?? plan.error
  return (
    <>
      <p className="soft small">{texts.help}</p>
      {[
        { name: option.robot.name, layout: mine },
        { name, layout: other },
      ].map((strip, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: mine and the other, whose names may be the same
        <div key={index} className="beside">
          <h3>{strip.name}</h3>
          {strip.layout.bars.length > 0 && (
            <Measured drawn="strip-beside" data={strip.layout}>
              {(width) => (
                <CycleStrip layout={strip.layout} width={width} until={until} name={texts.strip(strip.name)} />
              )}
            </Measured>
          )}
        </div>
      ))}
      {legs.length === 0 && <p>{texts.can(name)}</p>}
      {failed && (
        <p role="alert" className="loss">
          {texts.trouble(name, failed.message)}
        </p>
      )}
      {legs.length > 0 && !fresh && !failed && <Loading what={words().strip.loading} />}
      <div className="stack" role="status" data-testid="beside">
        {trip && trip.load < cycle.load && <p>{texts.loads(name, trip.load)}</p>}
        {other.bars.length > 0 &&
          timeWords(...both).map((sentence, index) => (
            <p key={sentence}>
              {sentence}{' '}
              {index === 0 && (
                <CameAbout explain={() => explainBesideTime(...both, source)}>{words().explain.opened}</CameAbout>
              )}
            </p>
          ))}
        {plan.data && !plan.isPlaceholderData && live.total !== null ? (
          <Points
            mine={{ option, points: live.total }}
            other={{ option: played, points: plan.data.total }}
            {...{ source }}
          />
        ) : (
          !failed && <p className="soft">{texts.computing}</p>
        )}
      </div>
    </>
  )
}

function Points(props: {
  mine: { option: Option; points: number }
  other: { option: Option; points: number }
  source: string
}) {
  const { mine, other, source } = props
  const named = ({ option, points }: typeof mine) => ({ name: option.robot.name, points })
  return (
    <p>
      {pointsWords(named(mine), named(other))}{' '}
      <CameAbout explain={() => explainBesidePoints(mine, other, source)}>{words().explain.opened}</CameAbout>
    </p>
  )
}
