import { useWords } from '../../words/catalogue.ts'

type Counted = 'auto' | 'teleop'

/** What is counted for: a count has no times that could tell. */
export function PeriodChoice(props: { period: Counted; choose(period: Counted): void }) {
  const texts = useWords().running
  return (
    <div className="line" role="group" aria-label={texts.period}>
      {(['auto', 'teleop'] as const).map((each) => (
        <button key={each} type="button" aria-pressed={each === props.period} onClick={() => props.choose(each)}>
          {texts[each]}
        </button>
      ))}
    </div>
  )
}
