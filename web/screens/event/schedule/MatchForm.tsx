import { Button, Checkbox, NativeSelect, TextInput } from '@mantine/core'
import { playoffAlliances } from '../../../../src/model/event/alliances.ts'
import { idOf } from '../../../../src/model/event/order.ts'
import { positionOf } from '../../../../src/model/event/seats.ts'
import { momentOf } from '../../../../src/model/event/table/time.ts'
import {
  type Alliance,
  alliances,
  type Match,
  type Side,
  type Slot,
  slotStates,
} from '../../../../src/model/scouting/types.ts'
import type { StoredMatch } from '../../../../src/store/types.ts'
import { useTyped } from '../../../data/useTyped.ts'
import { Panel } from '../../../shell/Panel.tsx'
import { words } from '../../../words/catalogue.ts'
import { listed } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { KeptNote } from '../KeptNote.tsx'
import { allianceName, matchName, seatName } from '../names.ts'
import { offsetOn } from './offset.ts'

/** One match: another robot in a place, who is a surrogate, absent or disqualified, and playing it again. */
export function MatchForm(props: { page: EventPage; stored: StoredMatch; onClose: () => void }) {
  const { page, stored, onClose } = props
  const { match } = stored
  const { edit } = page
  const texts = words().event.form
  const form = useTyped(`match/${page.event.id}/${match.id}/${stored.revision}`, {
    sides: { red: match.red, blue: match.blue },
    time: match.time ?? '',
  })
  const { sides, time } = form.typed
  const matches = page.schedule.matches.map((each) => each.match)
  const change = (alliance: Alliance, index: number, slot: Partial<Slot>) =>
    form.type({
      sides: { ...sides, [alliance]: sides[alliance].with(index, { ...sides[alliance][index]!, ...slot }) as Side },
      time,
    })
  // A time alone is of the day on which the match was to be, by the same clock.
  const day = match.time?.slice(0, 10) ?? page.event.body.startsOn
  const offset = /(?:Z|[+-]\d{2}:\d{2})$/.exec(match.time ?? '')?.[0] ?? offsetOn(day)
  const moment = time === match.time ? time : momentOf(time, { day, offset })
  const timeWrong = time !== '' && moment === null
  const { time: _, ...rest } = match
  const next: Match = { ...rest, ...(moment === null ? {} : { time: moment }), ...sides }
  const changed = JSON.stringify({ ...rest, ...sides, time }) !== JSON.stringify({ ...match, time: match.time ?? '' })
  const plays = matches.filter(({ phase, number }) => phase === match.phase && number === match.number)
  const again = { phase: match.phase, number: match.number, play: Math.max(...plays.map(({ play }) => play)) + 1 }
  const isLast = plays.every(({ play }) => play <= match.play)
  const keep = async (put: Match[], remove: string[] = []) => {
    await edit.look(put, remove)
    onClose()
  }
  const replay = () => {
    const expected = (side: Side) => side.map((slot) => ({ ...slot, state: 'expected' as const })) as Side
    const played: Match = {
      ...next,
      ...again,
      id: idOf(again),
      voids: match.id,
      red: expected(sides.red),
      blue: expected(sides.blue),
    }
    const { time: _, ...open } = played
    void keep([open])
  }
  const mates = match.phase === 'playoff' ? playoffAlliances(matches) : []
  return (
    <Panel title={matchName(match)} open onClose={onClose}>
      <KeptNote {...form} />
      {alliances.map((alliance) => (
        <fieldset key={alliance} className="stack">
          <legend>{allianceName(alliance)}</legend>
          {mates
            .filter((teams) => teams.includes(match[alliance][0].team))
            .map((teams) => (
              <p key={teams.join()} className="soft">
                {texts.alliance(listed(teams))}
              </p>
            ))}
          {sides[alliance].map((slot, index) => {
            const seat = { alliance, position: positionOf(slot, index) }
            return (
              <div key={seat.position} className="slot-fields">
                <NativeSelect
                  label={seatName(seat)}
                  value={slot.team}
                  data={[
                    ...(page.event.body.teams.some(({ team }) => team === slot.team) ? [] : [slot.team]),
                    ...page.event.body.teams.map(({ team, name }) => ({
                      value: team,
                      label: name ? `${team} ${name}` : team,
                    })),
                  ]}
                  onChange={(event) => change(alliance, index, { team: event.currentTarget.value })}
                />
                <NativeSelect
                  label={texts.state(seatName(seat))}
                  value={slot.state}
                  data={slotStates.map((state) => ({ value: state, label: texts.states[state] }))}
                  onChange={(event) => change(alliance, index, { state: event.currentTarget.value as Slot['state'] })}
                />
                <Checkbox
                  label={texts.surrogate}
                  aria-label={texts.surrogateAt(seatName(seat))}
                  checked={!slot.counts}
                  onChange={(event) => change(alliance, index, { counts: !event.currentTarget.checked })}
                />
              </div>
            )
          })}
        </fieldset>
      ))}
      <TextInput
        label={texts.time}
        description={texts.timeHelp}
        value={time}
        error={timeWrong ? texts.timeWrong : null}
        onChange={(event) => form.type({ sides, time: event.currentTarget.value })}
      />
      <p className="soft">{texts.kept}</p>
      <div className="row">
        <Button disabled={!changed || timeWrong} onClick={() => void keep([next])}>
          {texts.save}
        </Button>
        {isLast && (
          <Button variant="default" onClick={replay}>
            {texts.again}
          </Button>
        )}
        <Button variant="default" color="red" onClick={() => void keep([], [match.id])}>
          {texts.remove}
        </Button>
      </div>
      <p className="soft">{texts.look}</p>
    </Panel>
  )
}
