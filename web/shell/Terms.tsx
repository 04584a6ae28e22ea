import { Link } from 'wouter'
import { words } from '../words/catalogue.ts'
import type { GlossaryWord } from '../words/glossary.ts'
import { Term } from './Term.tsx'

/** The words of a screen that may be new, in a line of their own. */
export function Terms(props: { of: readonly GlossaryWord[] }) {
  const { help, glossary } = words()
  return (
    <p className="terms no-print">
      <span className="soft">{help.onThisScreen}</span>
      {props.of.map((word) => (
        <Term key={word} word={word}>
          {glossary[word].word}
        </Term>
      ))}
      <Link href="/help#words">{help.all}</Link>
    </p>
  )
}
