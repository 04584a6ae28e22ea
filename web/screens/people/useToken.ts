import { useEffect, useState } from 'react'

/** The token of a link, from behind its #; it is taken out of the address, so that it stays in no history. */
export function useToken(): string | null {
  const [token] = useState(() => /^#([\w-]{20,100})$/.exec(window.location.hash)?.[1] ?? null)
  useEffect(() => {
    if (token !== null) history.replaceState(history.state, '', window.location.pathname)
  }, [token])
  return token
}
