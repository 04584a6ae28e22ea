import { memo } from 'react'
import { words } from '../words/catalogue.ts'

export type CautionId = 'lifted' | 'spinning' | 'air' | 'energy'

/** How people get hurt by what this page helps to build or run, and what is usually done. */
export const Cautions = memo(function Cautions(props: {
  which: CautionId[]
  /** What they are about, where a page has cautions of its own besides. */
  of?: string
}) {
  const texts = words().cautions
  return (
    <aside className="caution stack" aria-label={props.of === undefined ? texts.label : `${texts.label}: ${props.of}`}>
      <div className="caution-list">
        {props.which.map((id) => (
          <div key={id}>
            <h3>{texts[id].title}</h3>
            <p>{texts[id].text}</p>
          </div>
        ))}
      </div>
      <p>{texts.whoDecides}</p>
    </aside>
  )
})
