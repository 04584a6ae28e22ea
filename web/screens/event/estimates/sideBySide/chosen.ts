/** As many teams as can stand side by side. */
export const most = 6

/** The teams that an address names, each once. */
export function chosenIn(search: string): string[] {
  const named = new URLSearchParams(search).get('teams')
  return named === null ? [] : [...new Set(named.split(',').filter(Boolean))].slice(0, most)
}

export const sideBySideAddress = (event: string, teams: readonly string[]) =>
  `/event/${event}/estimates?teams=${teams.map(encodeURIComponent).join(',')}`
