import { DocumentList } from '../documents/DocumentList.tsx'
import { NewTradeOff } from './NewTradeOff.tsx'
import '../start/start.css'

export default function TradeOffsScreen() {
  return (
    <DocumentList
      kind="comparison"
      href="/trade-offs"
      title="Trade-offs"
      noun="trade-off"
      intro="Ways to play side by side over the same unknowns: which is better, how sure that is, and what would turn it."
    >
      <NewTradeOff />
    </DocumentList>
  )
}
