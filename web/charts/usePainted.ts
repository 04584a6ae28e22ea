import { useEffect, useState } from 'react'
import { inTurn } from './turns.ts'

/** The value as soon as what it draws is on the screen: long work that begins with it leaves the drawing its processor. */
export function usePainted<T>(value: T): T {
  const [painted, setPainted] = useState(value)
  useEffect(() => inTurn(() => setPainted(value)), [value])
  return painted
}
