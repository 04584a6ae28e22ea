import { useWords } from '../words/catalogue.ts'

/** Where the browser stores nothing, the page says so before anything is recorded. */
export function Refused() {
  const texts = useWords().app
  return (
    <main className="page">
      <h1>{texts.refusedTitle}</h1>
      <p role="alert">{texts.refused}</p>
      <button type="button" className="strong" onClick={() => location.reload()}>
        {texts.retry}
      </button>
    </main>
  )
}
