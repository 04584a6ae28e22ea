import { Button, Loader } from '@mantine/core'
import { Component, type ReactNode } from 'react'
import { words } from '../words/catalogue.ts'

export function Loading(props: { what: string }) {
  return (
    <div className="row" role="status" aria-live="polite">
      <Loader size="sm" color="var(--deep)" aria-hidden="true" />
      <span>{words().shell.loading(props.what)}</span>
    </div>
  )
}

/** What went wrong in a sentence, and a way on. */
export function Trouble(props: { title: string; error: unknown; retry?: () => void; children?: ReactNode }) {
  const message = props.error instanceof Error ? props.error.message : String(props.error)
  return (
    <div className="sheet stack" role="alert">
      <h2>{props.title}</h2>
      <p>{message}</p>
      {props.children}
      {props.retry && (
        <div>
          <Button variant="default" onClick={props.retry}>
            {words().shell.again}
          </Button>
        </div>
      )}
    </div>
  )
}

export function Empty(props: { title: string; children: ReactNode }) {
  return (
    <div className="sheet stack">
      <h2>{props.title}</h2>
      {props.children}
    </div>
  )
}

/** A screen that breaks takes nothing else with it. */
export class Guard extends Component<{ children: ReactNode }, { error: unknown }> {
  override state: { error: unknown } = { error: null }
  static getDerivedStateFromError(error: unknown) {
    return { error }
  }
  override render() {
    if (this.state.error === null) return this.props.children
    return (
      <Trouble title={words().shell.broken} error={this.state.error} retry={() => this.setState({ error: null })}>
        <p>{words().shell.safe}</p>
      </Trouble>
    )
  }
}
