import { Button, Checkbox, NativeSelect, NumberInput } from '@mantine/core'
import { useState } from 'react'
import { Link } from 'wouter'
import type { Match, Phase, Seat } from '../../../../src/model/scouting/types.ts'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { EventNav } from '../EventNav.tsx'
import { useStandsPack } from '../useStandsPack.ts'
import { PaperSheet } from './PaperSheet.tsx'
import './sheets.css'

/** Sheets of paper with the boxes of the phone's form, for a phone without power; keyed afterwards on the hand-in page. */
export default function SheetsScreen(props: { id: string }) {
  const texts = words().sheets
  const pack = useStandsPack(props.id)
  if (pack.data) return <Sheets key={props.id} pack={pack.data} />
  if (pack.error) return <Trouble title={texts.notLoaded} error={pack.error} retry={() => void pack.refetch()} />
  return <Loading what={texts.loading} />
}

/** Matches that are printed at once at most: two pages each. */
const most = 20

const seats: readonly Seat[] = (['red', 'blue'] as const).flatMap((alliance) =>
  ([1, 2, 3] as const).map((position) => ({ alliance, position })),
)

const isToCome = ({ red, blue }: Match): boolean => [...red, ...blue].some(({ state }) => state === 'expected')

function Sheets(props: { pack: StandsPack }) {
  const { event, matches, game } = props.pack
  const texts = words().sheets
  const [phase, setPhase] = useState<Phase>('qualification')
  const ofPhase = matches.filter((match) => match.phase === phase)
  // What was played needs no paper any more.
  const [from, setFrom] = useState(() => ofPhase.find(isToCome)?.number ?? 1)
  const [count, setCount] = useState(1)
  const [blank, setBlank] = useState(matches.length === 0)
  const chosen: (Match | null)[] = blank
    ? Array.from({ length: count }, () => null)
    : ofPhase.filter(({ number }) => number >= from && number < from + count)
  return (
    <div className="stack wide">
      <div className="stack no-print">
        <p className="small">
          <Link href={`/event/${event.id}`}>{event.name}</Link>
        </p>
        <h1>{texts.title}</h1>
        <EventNav id={event.id} name={event.name} place="sheets" />
        <p>{texts.intro}</p>
        <div className="row sheets-choice">
          <NativeSelect
            label={texts.phase}
            value={phase}
            disabled={blank}
            data={(['practice', 'qualification', 'playoff'] as const).map((value) => ({
              value,
              label: texts.phases[value],
            }))}
            onChange={(change) => setPhase(change.currentTarget.value as Phase)}
          />
          <NumberInput
            label={texts.from}
            value={from}
            min={1}
            disabled={blank}
            onChange={(value) => setFrom(Math.max(1, Number(value) || 1))}
          />
          <NumberInput
            label={texts.count}
            value={count}
            min={1}
            max={most}
            onChange={(value) => setCount(Math.min(most, Math.max(1, Number(value) || 1)))}
          />
          <Checkbox label={texts.blank} checked={blank} onChange={(change) => setBlank(change.currentTarget.checked)} />
          <Button onClick={() => print()} disabled={chosen.length === 0}>
            {texts.print}
          </Button>
        </div>
        <p role="status">{chosen.length === 0 ? texts.noMatch : texts.pages(chosen.length * 2)}</p>
      </div>
      {chosen.flatMap((match, index) =>
        (['red', 'blue'] as const).map((alliance) => (
          <PaperSheet
            key={`${match?.id ?? index} ${alliance}`}
            event={event.name}
            game={game.body}
            match={match}
            alliance={alliance}
            seats={seats.filter((seat) => seat.alliance === alliance)}
          />
        )),
      )}
    </div>
  )
}
