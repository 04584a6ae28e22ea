import type { Game } from '../../../../src/model/documents/types.ts'
import type { Photo, PitVisit } from '../../../../src/model/scouting/types.ts'
import type { StandsPack } from '../../../codes/standsPack.ts'
import { words } from '../../../words/catalogue.ts'
import { listed, moment, plain, seconds } from '../../../words/format.ts'
import { nameOfMatch, nameOfPerson } from '../matchNames.ts'
import type { TeamVisits } from './gather.ts'
import { addressOf } from './photoAddress.ts'
import './visits.css'

const nameIn = (list: readonly { id: string; name: string }[], id: string): string =>
  list.find((each) => each.id === id)?.name ?? id

/** What a visit claims, line by line. */
export function claimLines(game: Game, { claims }: PitVisit): { what: string; claim: string }[] {
  const texts = words().visits.claims
  return [
    ...Object.entries(claims.goals ?? {}).map(([goal, pieces]) => ({
      what: nameIn(game.goals, goal),
      claim: texts.aMatch(plain(pieces)),
    })),
    ...(claims.cycle === undefined ? [] : [{ what: texts.cycle, claim: seconds(claims.cycle) }]),
    ...(claims.finish === undefined ? [] : [{ what: texts.finish, claim: nameIn(game.finishes, claims.finish) }]),
    ...(claims.routines?.length ? [{ what: texts.routines, claim: listed(claims.routines) }] : []),
    ...(claims.size ? [{ what: texts.size, claim: claims.size }] : []),
    ...(claims.mass === undefined ? [] : [{ what: texts.mass, claim: texts.kilograms(plain(claims.mass)) }]),
  ]
}

/** A team's visits and changes. `photos` null: they are still on their way. Nothing here was seen on the field: every visit says that it is claimed. */
export function Claims(props: { pack: StandsPack; team: TeamVisits; photos: ReadonlyMap<string, Photo> | null }) {
  const { pack, team, photos } = props
  const texts = words().visits
  const name = pack.event.teams.find((each) => each.team === team.team)?.name
  return (
    <section className="sheet stack whole" aria-label={texts.team(team.team)}>
      <h2>
        {texts.team(team.team)} {name}
      </h2>
      {team.changes.map(({ row, body }) => (
        <p key={row.id}>
          <strong>{texts.changed(nameOfMatch(pack, body.afterMatch), body.afterMatch !== null)}</strong> {body.note}
        </p>
      ))}
      {team.visits.map(({ row, body }, index) => (
        <article key={row.id} className={index === 0 ? 'stack' : 'stack soft'}>
          <p>
            <span className="claimed">{texts.claimed}</span>{' '}
            {texts.said(nameOfPerson(pack, row.scout), moment(body.at))}
          </p>
          <dl className="claims">
            {claimLines(pack.game.body, body).map(({ what, claim }) => (
              <div key={what}>
                <dt>{what}</dt>
                <dd>{claim}</dd>
              </div>
            ))}
          </dl>
          {body.note && <p>{body.note}</p>}
          <div className="row">
            {body.photos.map((id, place) => {
              const photo = photos?.get(id)
              const label = texts.photo(place + 1, team.team)
              if (!photo) return <span key={id}>{photos ? texts.photoMissing : texts.photoComes}</span>
              return <img key={id} className="visit-photo" src={addressOf(photo)} alt={label} />
            })}
          </div>
        </article>
      ))}
    </section>
  )
}
