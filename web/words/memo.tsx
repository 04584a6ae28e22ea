import { type ComponentType, memo } from 'react'
import { useUnits } from '../units/system.ts'
import { useLanguage } from './language.ts'

/**
 * A component that is drawn anew only where its props change, and where the language or the units do: its texts are none
 * of its props.
 */
export function memoWords<Props extends object>(Drawn: ComponentType<Props>): ComponentType<Props> {
  const Kept = memo(function Kept(props: { given: Props; shown: string }) {
    return <Drawn {...props.given} />
  }, same)
  return function InWords(props: Props) {
    return <Kept given={props} shown={`${useLanguage()} ${useUnits()}`} />
  }
}

function same<Props extends object>(
  before: { given: Props; shown: string },
  after: { given: Props; shown: string },
): boolean {
  const keys = new Set([...Object.keys(before.given), ...Object.keys(after.given)]) as Set<keyof Props>
  return before.shown === after.shown && [...keys].every((key) => Object.is(before.given[key], after.given[key]))
}
