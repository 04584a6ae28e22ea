import { useSyncExternalStore } from 'react'

/** Screens of the stands. They stand behind the address's #, so that none of them has to be asked for. */
export type Place = { screen: 'home' | (typeof plain)[number] } | { screen: 'draft'; id: string }

const plain = [
  'choose',
  'practice',
  'records',
  'settings',
  'training',
  'show',
  'read',
  'visit',
  'rank',
  'change',
] as const

export function placeOf(hash: string): Place {
  const [screen, id] = hash.replace(/^#\/?/, '').split('/')
  if (screen === 'draft' && id) return { screen, id: decodeURIComponent(id) }
  return { screen: plain.find((each) => each === screen) ?? 'home' }
}

const addressOf = (place: Place): string => {
  if (place.screen === 'draft') return `#/draft/${encodeURIComponent(place.id)}`
  return place.screen === 'home' ? '#/' : `#/${place.screen}`
}

export const linkTo = addressOf

export function go(place: Place): void {
  location.hash = addressOf(place)
}

/** Without a step back to where one came from: the record that was made is no place to return to. */
export function goInstead(place: Place): void {
  location.replace(addressOf(place))
}

const follow = (listener: () => void) => {
  addEventListener('hashchange', listener)
  return () => removeEventListener('hashchange', listener)
}

export const usePlace = (): Place => placeOf(useSyncExternalStore(follow, () => location.hash))
