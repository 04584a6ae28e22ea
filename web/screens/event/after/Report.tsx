import { Button, NativeSelect } from '@mantine/core'
import { Link } from 'wouter'
import type { After } from '../../../data/after.ts'
import { words } from '../../../words/catalogue.ts'
import { day } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { Lessons } from './Lessons.tsx'
import { Losses } from './Losses.tsx'
import { OurMatches } from './OurMatches.tsx'
import { changesSaid, expectedSaid, pointsSaid, questionSaid, rankSaid, winsSaid } from './said.ts'

/** Everything of it, with what went against us first. */
export function Report(props: { page: EventPage; after: After; chooseDesign(id: string): void }) {
  const { page, after } = props
  const { report, design, designs } = after
  const texts = words().after
  const at = `/event/${page.event.id}`
  const changes = changesSaid(page, after)
  const { game } = page
  return (
    <>
      <div className="sheet stack">
        <h3>{texts.questions}</h3>
        {report.questions.length === 0 ? (
          <p>{texts.noQuestions}</p>
        ) : (
          <ol className="after-questions">
            {report.questions.map((question) => {
              const sentence = questionSaid(question, { game, decisions: report.decisions })
              return <li key={sentence}>{sentence}</li>
            })}
          </ol>
        )}
        <p className="soft">{texts.questionsHow}</p>
      </div>
      <div className="sheet stack">
        <h3>{texts.ours}</h3>
        <p>{rankSaid(report)}</p>
        {report.forecasts && (
          <p>
            {winsSaid(report)} {texts.counted(report.forecasts.inside80, report.forecasts.matches)} {texts.tie}
          </p>
        )}
        <OurMatches page={page} report={report} />
        <p className="no-print">
          <Link href={`${at}/forecasts`}>{texts.toForecasts}</Link>
        </p>
      </div>
      <div className="sheet stack">
        <h3>{texts.time}</h3>
        {designs.length > 1 && (
          <NativeSelect
            className="no-print"
            label={texts.design}
            value={design?.id ?? ''}
            data={designs.map(({ id, name }) => ({ value: id, label: name }))}
            onChange={({ currentTarget: { value } }) => props.chooseDesign(value)}
          />
        )}
        <Losses report={report} />
        <p className="no-print">
          <Link
            href={`${at}/field?${new URLSearchParams({ team: report.team, only: 'match', ...(design && { design: design.id }) })}`}
          >
            {texts.toField}
          </Link>
        </p>
      </div>
      <div className="sheet stack">
        <h3>{texts.decisions}</h3>
        {report.decisions.length === 0 && <p>{texts.noDecisions}</p>}
        {report.decisions.map((decision) => (
          <article key={decision.id} className="stack whole">
            <h4>
              <Link href={`/decisions/${decision.id}`}>{texts.decided(decision.name, day(decision.decidedOn))}</Link>
            </h4>
            <p>
              {expectedSaid(decision)} {decision.ofDesign ? pointsSaid(report) : texts.otherDesign}
            </p>
            {decision.checks.length > 0 ? (
              <dl className="after-checks">
                {decision.checks.map(({ quantity, expected, when }) => (
                  <div key={quantity}>
                    <dt>{quantity}</dt>
                    <dd>
                      {texts.checkExpected}: {expected} ({when})
                    </dd>
                  </div>
                ))}
              </dl>
            ) : (
              decision.checkAtEvent !== '' && (
                <p>
                  {texts.check}: {decision.checkAtEvent}
                </p>
              )
            )}
            {decision.wouldChange.length > 0 && (
              <>
                <p>{texts.wouldChange}:</p>
                <ul>
                  {decision.wouldChange.map((line) => (
                    <li key={line}>{line}</li>
                  ))}
                </ul>
              </>
            )}
          </article>
        ))}
      </div>
      <div className="sheet stack">
        <h3>{texts.changes}</h3>
        {changes.length === 0 ? <p>{texts.noChanges}</p> : <Lines of={changes} />}
        <Lessons key={page.event.revision} page={page} />
        <h3>{texts.carried}</h3>
        <p>
          {texts.carriedHow} <Link href={`${at}/estimates`}>{texts.toEstimates}</Link>
        </p>
        <div className="no-print">
          <Button variant="default" onClick={() => window.print()}>
            {texts.print}
          </Button>
        </div>
      </div>
    </>
  )
}

const Lines = ({ of }: { of: readonly string[] }) => (
  <ul>
    {of.map((line) => (
      <li key={line}>{line}</li>
    ))}
  </ul>
)
