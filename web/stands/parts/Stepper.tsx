import { words } from '../words/catalogue.ts'

/** A small count with a button on either side. */
export function Stepper(props: { label: string; value: number; change(value: number): void }) {
  const { label, value } = props
  const texts = words().check
  return (
    <div className="stepper" role="group" aria-label={label}>
      <span>{label}</span>
      <button
        type="button"
        aria-label={texts.fewer(label)}
        disabled={value === 0}
        onClick={() => props.change(value - 1)}
      >
        −
      </button>
      <output>{value}</output>
      <button
        type="button"
        aria-label={texts.more(label)}
        disabled={value >= 100}
        onClick={() => props.change(value + 1)}
      >
        +
      </button>
    </div>
  )
}
