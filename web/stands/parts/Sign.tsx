import type { State } from '../data/database.ts'

/** The three states of a record by their shape: an empty phone, a full disk with a tick, a triangle. */
export function Sign({ state }: { state: State }) {
  return (
    <svg className={`sign ${state}`} width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
      {state === 'phone' && (
        <>
          <rect x="5.5" y="1.5" width="9" height="17" rx="2" fill="none" stroke="currentColor" strokeWidth="2" />
          <path d="M8.5 15.5h3" stroke="currentColor" strokeWidth="1.6" />
        </>
      )}
      {state === 'server' && (
        <>
          <circle cx="10" cy="10" r="9" fill="currentColor" />
          <path d="M5.5 10.5l3 3 6-6.5" fill="none" className="sign-in" strokeWidth="2.4" />
        </>
      )}
      {state === 'attention' && (
        <>
          <path d="M10 1.5L19 18H1z" fill="currentColor" />
          <path d="M10 7v5.5M10 14.2v2" className="sign-in" strokeWidth="2.2" />
        </>
      )}
    </svg>
  )
}
