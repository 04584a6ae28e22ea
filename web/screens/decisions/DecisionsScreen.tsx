import { Link } from 'wouter'
import { DocumentList } from '../documents/DocumentList.tsx'
import '../start/start.css'

export default function DecisionsScreen() {
  return (
    <DocumentList
      kind="decision"
      href="/decisions"
      title="Decisions"
      noun="decision record"
      intro="What was decided and why, with the inputs as they were, what would change it and how it will be checked."
    >
      <p>
        A decision record is made from a <Link href="/trade-offs">trade-off</Link>.
      </p>
    </DocumentList>
  )
}
