import { useEffect, useMemo, useState } from 'react'
import type { Input } from '../../../src/model/compare/types.ts'
import type { Game, Option } from '../../../src/model/documents/types.ts'
import { whenIdle } from '../../charts/turns.ts'
import { useLanguage } from '../../words/language.ts'
import { candidates } from './candidates.ts'
import { stillToAnswer } from './hardwareUnknowns.ts'

interface Documents {
  game: Game
  options: Option[]
}

/** What a choice of further unknowns offers. What hardware leaves unknown is computed behind the pictures; empty until then. */
export function useCandidates(documents: Documents): Input[] {
  const language = useLanguage()
  const [ready, setReady] = useState<Documents | null>(null)
  useEffect(() => {
    let left = false
    const prepare = async () => {
      for (const answer of stillToAnswer(documents.options)) {
        await whenIdle()
        if (left) return
        answer()
      }
    }
    // What can not be answered is said where it is asked for while drawing.
    const show = () => !left && setReady(documents)
    prepare().then(show, show)
    return () => {
      left = true
    }
  }, [documents])
  // biome-ignore lint/correctness/useExhaustiveDependencies: names are said in the language chosen
  return useMemo(() => (ready ? candidates(ready) : []), [ready, language])
}
