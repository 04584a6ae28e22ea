import { Button } from '@mantine/core'
import type { CompareReport } from '../../../../src/model/compare/types.ts'
import type { StatedField } from '../../../../src/model/documents/records.ts'
import type { Game, Option } from '../../../../src/model/documents/types.ts'
import { CameAbout } from '../../../shell/CameAbout.tsx'
import { Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { plain } from '../../../words/format.ts'
import { explainStanding } from './explain.ts'
import { FieldTable } from './FieldTable.tsx'
import { fieldWords } from './fieldWords.ts'
import { againstPoints, headlineBy, type Played, standingBy } from './standing.ts'
import type { FieldPlayed } from './useFieldPlayed.ts'

/** The answer by wins or ranking points, whether points say the same, and how far the playing is. */
export function FieldAnswer(props: {
  report: CompareReport | null
  measure: Played
  documents: { game: Game; options: Option[] }
  field: StatedField | null
  /** Whether partners and opponents could not be loaded. */
  error: Error | null
  played: FieldPlayed
  source: string
}) {
  const { report, measure, documents, field, played, source } = props
  const text = words().objective
  const found = report?.field
  const standing = found && standingBy(found, measure)
  const against = found && againstPoints({ ...report, field: found }, measure, documents)
  return (
    <section className="sheet stack" aria-label={text.region}>
      {found && standing && (
        <div className={played.state === 'running' && !played.fresh ? 'stack outdated' : 'stack'}>
          <p className="answer">
            {standing.lead ? (
              <CameAbout
                explain={() => explainStanding({ report: found, measure, documents, field, source }, standing)}
              >
                {headlineBy(found, measure, documents.options)}
              </CameAbout>
            ) : (
              headlineBy(found, measure, documents.options)
            )}
          </p>
          {against && against.sentences.length > 0 && (
            <p className={against.disagree ? 'disagree' : undefined}>
              {against.sentences.map((sentence, index) =>
                index === 0 && against.disagree ? (
                  <strong key={sentence}>{sentence}</strong>
                ) : (
                  <span key={sentence}> {sentence}</span>
                ),
              )}
            </p>
          )}
          <FieldTable game={documents.game} options={documents.options} report={found} />
          {field && <p className="soft small">{fieldWords(field, found)}</p>}
          <p className="soft small">{text.errors}</p>
        </div>
      )}
      {props.error ? (
        <Trouble title={text.notFound} error={props.error} />
      ) : played.state === 'failed' ? (
        <Trouble title={text.failed} error={played.error} retry={played.goOn} />
      ) : (
        <Progress played={played} wanted={field?.replicates ?? null} shown={found !== undefined} />
      )}
      <p className="soft small">{text.pointsBelow}</p>
    </section>
  )
}

function Progress(props: { played: FieldPlayed; wanted: number | null; shown: boolean }) {
  const { played, wanted, shown } = props
  const text = words().objective
  const running = played.state === 'running' || wanted === null
  if (played.state === 'done' && played.fresh) return null
  return (
    <div className="stack no-print" style={{ gap: '0.4rem' }}>
      {running && (
        <progress
          max={wanted ?? 1}
          value={played.done > 0 ? played.done : undefined}
          aria-label={text.region}
          style={{ width: '100%' }}
        />
      )}
      <div className="row">
        <p className="soft small" role="status">
          {running
            ? played.done === 0 || wanted === null
              ? text.preparing
              : text.running(plain(played.done), plain(wanted))
            : played.fresh
              ? text.stopped(plain(played.done))
              : text.stoppedEarly}
          {shown && !played.fresh && ` ${played.answer ? text.old : text.kept}`}
        </p>
        {played.state === 'running' && (
          <Button size="compact-md" variant="default" onClick={played.stop}>
            {text.stop}
          </Button>
        )}
        {played.state === 'stopped' && (
          <Button size="compact-md" variant="default" onClick={played.goOn}>
            {text.goOn}
          </Button>
        )}
      </div>
    </div>
  )
}
