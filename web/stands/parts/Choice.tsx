import { useId } from 'react'

/** One of a few, side by side; null is a choice of its own where it is among them. */
export function Choice<T extends string | number | boolean | null | undefined>(props: {
  label: string
  value: T
  options: readonly { value: T; name: string }[]
  choose(value: NoInfer<T>): void
}) {
  const id = useId()
  return (
    <fieldset className="choice">
      <legend>{props.label}</legend>
      <div className="chips">
        {props.options.map(({ value, name }) => (
          <label key={String(value)} className="chip">
            <input type="radio" name={id} checked={value === props.value} onChange={() => props.choose(value)} />
            <span>{name}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
