import { useState } from 'react'
import { useSearch } from 'wouter'
import type { DocumentSummary } from '../../src/store/types.ts'
import { useList } from './documents.ts'

/**
 * Which game something new is for: what a person chooses, else the one that the address names (`?game=`), else the one
 * that was saved last, because who has made their own game no longer means the demo's.
 */
export function gameChosen(
  games: readonly DocumentSummary[],
  chosen: string | null,
  asked: string | null,
): DocumentSummary | null {
  const named = (id: string | null) => games.find((game) => game.id === id)
  return named(chosen) ?? named(asked) ?? [...games].sort((a, b) => b.savedAt.localeCompare(a.savedAt))[0] ?? null
}

export function useGameChoice() {
  const games = useList('game')
  const { error, refetch } = games
  const asked = new URLSearchParams(useSearch()).get('game')
  const [chosen, choose] = useState<string | null>(null)
  return { games: games.data ?? null, game: gameChosen(games.data ?? [], chosen, asked), choose, error, refetch }
}
