import { useEffect, useRef, useState } from 'react'
import { useLocation, useSearch } from 'wouter'
import { firstSetup, fromSearch, type MatchSetup, toSearch, withKnown } from './setup.ts'

const keyOf = (game: string) => `match/${game}`

function kept(game: string): MatchSetup | null {
  try {
    return fromSearch(localStorage.getItem(keyOf(game)) ?? '')
  } catch {
    return null
  }
}

function keep(game: string, search: string): void {
  try {
    localStorage.setItem(keyOf(game), search)
  } catch {
    // A forbidden storage costs the memory of the set-up: the address has it.
  }
}

/**
 * The set-up of a game's match. The address holds it; an address without one gets what this browser kept, or a first match.
 * Every change can be undone.
 */
export function useSetup(
  game: string,
  ways: readonly { id: string; body: { design: string } }[],
  levels: readonly string[],
) {
  const search = useSearch()
  const [, go] = useLocation()
  const [before, setBefore] = useState<MatchSetup[]>([])
  const asked = fromSearch(search)
  const known = withKnown(asked ?? kept(game) ?? firstSetup(ways, levels), new Set(ways.map(({ id }) => id)), levels)
  const wanted = toSearch(known)
  const typing = useRef<string | null>(null)
  const told = asked !== null
  useEffect(() => {
    if (!told) go(`/match/${game}?${wanted}`, { replace: true })
    keep(game, wanted)
  }, [told, wanted, game, go])
  const show = (next: MatchSetup) => go(`/match/${game}?${toSearch(next)}`, { replace: true })
  return {
    setup: known,
    /** `field`: what is being typed in; one step of undo takes back what was typed there in a row. */
    change: (next: Partial<MatchSetup>, field: string | null = null) => {
      if (field === null || field !== typing.current) setBefore([...before.slice(-49), known])
      typing.current = field
      show({ ...known, ...next })
    },
    undo:
      before.length === 0
        ? null
        : () => {
            typing.current = null
            show(before.at(-1)!)
            setBefore(before.slice(0, -1))
          },
  }
}
