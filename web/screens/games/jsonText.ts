/** Where in a text a fault of its JSON is: line and column, from 1. Null where the browser does not say. */
export function faultAt(text: string, error: Error): { line: number; column: number } | null {
  const named = /line (\d+) column (\d+)/.exec(error.message)
  if (named) return { line: Number(named[1]), column: Number(named[2]) }
  const at = /position (\d+)/.exec(error.message)
  const position = at ? Number(at[1]) : /end of|unterminated/i.test(error.message) ? text.length : null
  if (position === null) return null
  const before = text.slice(0, position).split('\n')
  return { line: before.length, column: before.at(-1)!.length + 1 }
}

/** 'goals › 2 › award › teleop', with entries of lists counted from 1. */
export const pathWords = (path: readonly (string | number)[], whole: string): string =>
  path.length === 0 ? whole : path.map((part) => (typeof part === 'number' ? String(part + 1) : part)).join(' › ')
