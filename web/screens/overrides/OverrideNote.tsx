import type { KeptOverride } from '../../../src/model/documents/records.ts'
import { words } from '../../words/catalogue.ts'
import { OwnMark } from './OwnMark.tsx'
import { computedWords, type Documents, overriddenName, ownWords, whyWords } from './words.ts'

/** Beside an answer that holds overridden numbers: how many, and each as computed and as set, with its reason. */
export function OverrideNote(props: { kept: readonly KeptOverride[] | undefined; documents: Documents }) {
  const { kept = [], documents } = props
  const texts = words().overrides
  if (kept.length === 0) return null
  return (
    <section className="override-note" aria-label={texts.record.title}>
      <p>
        <strong>{texts.contains(kept.length)}</strong>
      </p>
      <ul>
        {kept.map((one) => (
          <li key={one.id}>
            {overriddenName(one, documents)}: <span className="visually-hidden">{texts.computed} </span>
            <s>{computedWords(one)}</s> <OwnMark /> <strong>{ownWords(one)}</strong>{' '}
            <span className="soft">{whyWords(one)}</span>
          </li>
        ))}
      </ul>
    </section>
  )
}
