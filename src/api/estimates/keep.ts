/**
 * Keeps the last answer of each event whose records are kept, with what it follows from: it goes with them. However many ask,
 * it is worked out once; a failure is not kept.
 */
export function keeper<Answer>() {
  const kept = new WeakMap<object, { from: object; answer: Promise<Answer> }>()
  return (of: object, from: object, make: () => Promise<Answer>): Promise<Answer> => {
    const before = kept.get(of)
    if (before?.from === from) return before.answer
    const answer = make()
    kept.set(of, { from, answer })
    answer.catch(() => kept.delete(of))
    return answer
  }
}
