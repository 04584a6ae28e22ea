import { Link } from 'wouter'
import type { EventPack } from '../../../data/eventPack.ts'
import { useFieldCheck } from '../../../data/fieldCheck.ts'
import { Loading } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { sentences } from '../field/said.ts'
import { useDesigns } from '../field/useDesigns.ts'

/** What the field says of our design, in one sentence, with the way to all of it. */
export function FieldSays({ pack, team }: { pack: EventPack; team: string }) {
  const texts = words().pitBoard
  const designs = useDesigns(pack.game.id)
  const design = designs.data?.[0]
  const check = useFieldCheck(
    pack.event.id,
    design ? { team, design: design.id, only: null, decision: null, revision: design.revision } : null,
  )
  const { report } = check.data ?? {}
  const nothing = (designs.data && !design) || (report && !report.whole)
  const error = designs.error ?? check.error
  return (
    <section className="sheet stack" aria-labelledby="pit-field">
      <h2 id="pit-field">{texts.field}</h2>
      {report?.whole ? (
        <p className="pit-said">{sentences(report, report.whole).answer}</p>
      ) : nothing ? (
        <p>{texts.noField}</p>
      ) : error ? (
        <p role="alert">
          {texts.fieldTrouble}: {(error as Error).message}
        </p>
      ) : (
        <Loading what={texts.fieldWhat} />
      )}
      <p>
        <Link
          href={`/event/${pack.event.id}/field?${new URLSearchParams({ team, ...(design && { design: design.id }) })}`}
        >
          {texts.toField}
        </Link>
      </p>
    </section>
  )
}
