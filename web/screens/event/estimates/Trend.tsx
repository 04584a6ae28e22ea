import { Figure } from '../../../charts/Figure.tsx'
import { Measured } from '../../../charts/Measured.tsx'
import { TrendLine } from '../../../charts/TrendLine.tsx'
import { useMade } from '../../../data/estimates.ts'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { plain, points } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { matchName } from '../names.ts'
import { useHalfLifeSaid } from './useHalfLifeSaid.ts'

/** A team's matches one after the other, with what was believed after each. */
export function Trend({ page, team }: { page: EventPage; team: string }) {
  const { trend: texts, made: madeTexts } = words()
  const made = useMade(page.event.id, team)
  const halfLifeSaid = useHalfLifeSaid(page.event.id)
  const names = new Map(page.schedule.matches.map(({ match }) => [match.id, matchName(match)]))
  const after = new Map(made.data?.running.map((each) => [each.match, each]))
  const told = (made.data?.attempts.matches ?? []).flatMap(({ match, value }) => {
    const running = after.get(match)
    const name = names.get(match) ?? match
    return running ? [{ name, value, mean: running.mean, low: running.interval80[0], high: running.interval80[1] }] : []
  })
  return (
    <div className="sheet stack">
      <h3>{texts.title}</h3>
      {made.error && !made.data ? (
        <Trouble title={madeTexts.trouble} error={made.error} retry={() => void made.refetch()} />
      ) : !made.data ? (
        <Loading what={madeTexts.what} />
      ) : told.length < 2 ? (
        <p className="soft">{texts.few}</p>
      ) : (
        <>
          <Figure
            title={texts.axis}
            table={{
              head: [texts.match, texts.seen, texts.believed, texts.between],
              rows: told.map(({ name, value, mean, low, high }) => [
                name,
                points(value),
                points(mean),
                words().estimates.between(points(low), points(high)),
              ]),
            }}
          >
            <Measured drawn="trend" data={told} most={720}>
              {(width) => (
                <TrendLine
                  width={width}
                  label={texts.picture(team)}
                  write={(value) => plain(value, 1)}
                  points={told.map(({ name, ...point }) => ({
                    ...point,
                    label: texts.point(
                      name,
                      points(point.value),
                      points(point.mean),
                      points(point.low),
                      points(point.high),
                    ),
                  }))}
                />
              )}
            </Measured>
          </Figure>
          <p className="soft">
            {texts.how} {halfLifeSaid}
          </p>
        </>
      )}
    </div>
  )
}
