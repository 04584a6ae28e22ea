import { words } from '../../words/catalogue.ts'
import { DocumentList } from '../documents/DocumentList.tsx'
import { NewTradeOff } from './NewTradeOff.tsx'
import '../start/start.css'

export default function TradeOffsScreen() {
  const text = words().tradeoffs.list
  return (
    <DocumentList kind="comparison" href="/trade-offs" title={text.title} noun={text.noun} intro={text.intro}>
      <NewTradeOff />
    </DocumentList>
  )
}
