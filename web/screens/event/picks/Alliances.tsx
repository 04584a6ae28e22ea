import { allianceOf, type SelectionState } from '../../../../src/model/picks/selection/index.ts'
import { words } from '../../../words/catalogue.ts'
import { listed } from '../../../words/format.ts'

/** All alliances as they are, ours marked in words. */
export function Alliances({ state, us }: { state: SelectionState; us: string }) {
  const texts = words().picks
  const own = allianceOf(state, us)?.number
  return (
    <section className="sheet stack" aria-labelledby="alliances">
      <h2 id="alliances">{texts.alliances}</h2>
      <table className="tide">
        <thead>
          <tr>
            <th scope="col">{texts.alliance}</th>
            <th scope="col">{texts.captain}</th>
            <th scope="col">{texts.partners}</th>
          </tr>
        </thead>
        <tbody>
          {state.alliances.map(({ number, captain, partners }) => (
            <tr key={number} className={number === own ? 'picks-own' : undefined}>
              <th scope="row">
                {number}
                {number === own && <span className="slot-mark">{texts.ours}</span>}
                {number === state.turn?.alliance && <span className="slot-mark">{texts.isOnTurn}</span>}
              </th>
              <td>{captain ?? texts.nobody}</td>
              <td>{partners.join(', ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {state.declined.length > 0 && <p>{texts.declined(listed(state.declined))}</p>}
      {state.withdrawn.length > 0 && <p>{texts.withdrawn(listed(state.withdrawn))}</p>}
    </section>
  )
}
