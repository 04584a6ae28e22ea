import { Link } from 'wouter'
import { useList } from '../../data/documents.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { Term } from '../../shell/Term.tsx'
import { words } from '../../words/catalogue.ts'
import { OpenQuestion } from './OpenQuestion.tsx'
import { Shelves } from './Shelves.tsx'
import './start.css'

/** Newest first. */
const newest = <T extends { savedAt: string }>(list: readonly T[] | undefined): T | null =>
  [...(list ?? [])].sort((a, b) => b.savedAt.localeCompare(a.savedAt))[0] ?? null

export function StartScreen() {
  const decisions = useList('decision')
  const decision = newest(decisions.data)
  const texts = words().start
  return (
    <div className="stack wide">
      <div className="stack">
        <h1>{texts.title}</h1>
        <p>{texts.intro}</p>
      </div>
      {decisions.isPending ? (
        <Loading what={texts.what} />
      ) : decisions.error ? (
        <Trouble title={texts.notLoaded} error={decisions.error} retry={() => void decisions.refetch()} />
      ) : decision ? (
        <OpenQuestion decision={decision} />
      ) : (
        <FirstSteps />
      )}
      <Words />
      <Shelves />
    </div>
  )
}

/** Words that may be new, and the way to help. */
function Words() {
  const texts = words().start.words
  const terms = Object.entries(texts.terms) as [keyof typeof texts.terms, string][]
  return (
    <p className="terms">
      <span className="soft">{texts.label}</span>
      {terms.map(([word, name]) => (
        <Term key={word} word={word}>
          {name}
        </Term>
      ))}
      <Link href="/help">{texts.all}</Link>
    </p>
  )
}

/** Where nothing is decided yet. */
function FirstSteps() {
  const comparisons = useList('comparison')
  const texts = words().start.first
  const compared = (comparisons.data?.length ?? 0) > 0
  return (
    <section className="sheet stack" aria-label={texts.label}>
      <h2>{compared ? texts.noDecision : texts.nothing}</h2>
      <p>{compared ? texts.decide : texts.begin}</p>
      <div className="row ways">
        {compared ? (
          <Link href="/trade-offs">{texts.toTradeOffs}</Link>
        ) : (
          <>
            <Link href="/games">{texts.toGames}</Link>
            <Link href="/quick-sheet">{texts.toQuickSheet}</Link>
          </>
        )}
      </div>
    </section>
  )
}
