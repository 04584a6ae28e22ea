import { Button } from '@mantine/core'
import type { After } from '../../../data/after.ts'
import { words } from '../../../words/catalogue.ts'
import type { EventPage } from '../EventFrame.tsx'
import {
  changesSaid,
  expectedSaid,
  lessonsOf,
  pointsSaid,
  questionSaid,
  rankSaid,
  tripsSaid,
  winsSaid,
} from './said.ts'

/** Lines of a column, so that all of it stays on one page. */
const mostLines = 5

/** Predicted, seen, changed, on one page across; if it was wrong, that first. */
export function Slide({ page, after }: { page: EventPage; after: After }) {
  const texts = words().after
  const { report } = after
  const { game } = page
  const asked = report.questions.map((question) => questionSaid(question, { game, decisions: report.decisions }))
  const decision = report.decisions.find(({ ofDesign }) => ofDesign) ?? report.decisions[0]
  const predicted = [
    ...(decision ? [expectedSaid(decision)] : []),
    ...(report.forecasts ? [winsSaid(report)!] : []),
    ...(decision?.checks ?? []).map(({ quantity, expected }) => `${quantity}: ${expected}`),
  ]
  const points = pointsSaid(report)
  const trips = tripsSaid(report)
  const seen = [rankSaid(report), ...(points ? [points] : []), ...(trips ? [trips] : [])]
  const changed = [...lessonsOf(page), ...changesSaid(page, after)]
  return (
    <>
      <article className="sheet after-slide" aria-label={texts.views.slide}>
        <h2>{texts.slideOf(page.event.body.name, report.team)}</h2>
        {asked[0] !== undefined && <p className="answer">{asked[0]}</p>}
        <div className="after-columns">
          <Column title={texts.predicted} lines={predicted} />
          <Column title={texts.seen} lines={seen} />
          <Column title={texts.changed} lines={changed} />
        </div>
        {asked.length > 1 && <Column title={texts.questions} lines={asked.slice(1)} most={3} />}
        <p className="soft small">{texts.slideSource(report.watched, report.forecasts?.matches ?? 0)}</p>
      </article>
      <div className="no-print">
        <Button variant="default" onClick={() => window.print()}>
          {texts.print}
        </Button>
      </div>
    </>
  )
}

function Column({ title, lines, most = mostLines }: { title: string; lines: readonly string[]; most?: number }) {
  const texts = words().after
  const shown = lines.slice(0, most)
  return (
    <section>
      <h3>{title}</h3>
      {lines.length === 0 ? (
        <p>{texts.nothingChanged}</p>
      ) : (
        <ul>
          {shown.map((line) => (
            <li key={line}>{line.length > 220 ? `${line.slice(0, 219)}…` : line}</li>
          ))}
        </ul>
      )}
      {lines.length > shown.length && <p className="soft small">{texts.more(lines.length - shown.length)}</p>}
    </section>
  )
}
