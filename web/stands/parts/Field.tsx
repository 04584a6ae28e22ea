import { type InputHTMLAttributes, useId } from 'react'

/** A text that is typed, with what it is for and what is wrong with it beside it. */
export function Field({
  label,
  help,
  error,
  change,
  ...input
}: { label: string; help?: string; error?: string | null; value: string; change(value: string): void } & Omit<
  InputHTMLAttributes<HTMLInputElement>,
  'onChange' | 'value'
>) {
  const id = useId()
  const told = [help && `${id}help`, error && `${id}error`].filter(Boolean).join(' ')
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        {...input}
        id={id}
        autoComplete="off"
        aria-invalid={error ? true : undefined}
        aria-describedby={told || undefined}
        onChange={(event) => change(event.currentTarget.value)}
      />
      {help && (
        <p id={`${id}help`} className="soft small">
          {help}
        </p>
      )}
      {error && (
        <p id={`${id}error`} className="wrong">
          {error}
        </p>
      )}
    </div>
  )
}
