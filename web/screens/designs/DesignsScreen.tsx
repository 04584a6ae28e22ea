import { DocumentList } from '../documents/DocumentList.tsx'
import { NewDesign } from './NewDesign.tsx'

export default function DesignsScreen() {
  return (
    <DocumentList
      kind="design"
      href="/designs"
      title="Designs"
      noun="design"
      intro="A design is a robot, as far as it is known: where the time of its trips goes, how often they succeed, and how it finishes."
    >
      <NewDesign />
    </DocumentList>
  )
}
