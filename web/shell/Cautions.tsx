import { type Caution, cautions, whoDecides } from '../words/cautions.ts'

/** How people get hurt by what this page helps to build or run, and what is usually done. */
export function Cautions(props: { which: Caution['id'][] }) {
  return (
    <aside className="caution stack" aria-label="Cautions">
      <div className="caution-list">
        {props.which.map((id) => (
          <div key={id}>
            <h3>{cautions[id].title}</h3>
            <p>{cautions[id].text}</p>
          </div>
        ))}
      </div>
      <p>{whoDecides}</p>
    </aside>
  )
}
