import { Component, type ReactNode } from 'react'
import { words } from '../words/catalogue.ts'

/** What stands where a screen broke: a record under way is in the database, not on the screen. */
export class Broken extends Component<{ children: ReactNode }, { failed: boolean }> {
  override state = { failed: false }

  static getDerivedStateFromError() {
    return { failed: true }
  }

  override render() {
    if (!this.state.failed) return this.props.children
    const texts = words().app
    return (
      <main className="page">
        <p role="alert">{texts.broken}</p>
        <button type="button" className="strong" onClick={() => location.reload()}>
          {texts.reload}
        </button>
      </main>
    )
  }
}
