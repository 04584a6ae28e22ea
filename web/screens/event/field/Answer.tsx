import { Link } from 'wouter'
import type { FieldReport } from '../../../../src/model/scouting/field/types.ts'
import { secondsCell } from '../../../charts/cells.ts'
import { Figure } from '../../../charts/Figure.tsx'
import { Measured } from '../../../charts/Measured.tsx'
import { TripDots } from '../../../charts/TripDots.tsx'
import type { Stored } from '../../../data/documents.ts'
import type { RunKind } from '../../../data/fieldCheck.ts'
import { words } from '../../../words/catalogue.ts'
import { percent, plain } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { matchName } from '../names.ts'
import { remarks, sentences } from './said.ts'

export interface About {
  page: EventPage
  design: Stored<'design'>
  report: FieldReport
}

/** A match by its name, a run of practice by its driver and number. */
export function runName({ schedule }: EventPage, { id, kind, driver, number }: FieldReport['runs'][number]): string {
  const match = schedule.matches.find((each) => each.match.id === id)?.match
  if (kind === 'match' && match) return matchName(match)
  return words().fieldCheck.practiceRun(driver, number)
}

/** The answer in words, and each trip over what the design predicts. */
export function Answer(
  props: About & {
    team: string
    only: RunKind | null
    /** The decision record that the robot is taken from; null: the design as it is now. */
    frozenIn: { id: string; name: string } | null
    /** How often the robot was changed during the event. */
    changes: number
    whole: NonNullable<FieldReport['whole']>
  },
) {
  const { page, design, report, whole } = props
  const texts = words().fieldCheck
  const { answer, further } = sentences(report, whole)
  return (
    <div className="sheet stack">
      <p className="only-paper">{texts.compared(props.team, design.name, texts.runsOf[props.only ?? 'all'])}</p>
      {props.frozenIn && (
        <p>
          {texts.frozenIn(design.name)} <Link href={`/decisions/${props.frozenIn.id}`}>{props.frozenIn.name}</Link>.
        </p>
      )}
      <p className="answer">{answer}</p>
      {further.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <Figure
        title={texts.tripsTitle}
        table={{
          head: [texts.run, texts.seconds, texts.seenToEnd],
          rows: report.seen.map(({ seconds, ended, run }) => [
            runName(page, report.runs[run]!),
            secondsCell(seconds),
            ended ? texts.yes : texts.no,
          ]),
        }}
      >
        <Measured drawn="trips" data={report}>
          {(width) => <TripDots width={width} distribution={report.distribution} trips={report.seen} />}
        </Measured>
      </Figure>
      <p className="soft small">{texts.dots.model}</p>
      <p>
        {whole.p < 0.05
          ? texts.fitsNot(percent(whole.p), plain(whole.distance))
          : texts.fits(percent(whole.p), plain(whole.distance))}
      </p>
      <details>
        <summary>{texts.howCame}</summary>
        <ul>
          {[...remarks(report, props.changes), texts.howFirst, texts.howSpots, texts.howErrors].map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </details>
    </div>
  )
}
