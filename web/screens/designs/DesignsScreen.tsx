import { words } from '../../words/catalogue.ts'
import { DocumentList } from '../documents/DocumentList.tsx'
import { NewDesign } from './NewDesign.tsx'

export default function DesignsScreen() {
  const texts = words().designs.list
  return (
    <DocumentList kind="design" href="/designs" title={texts.title} noun={texts.noun} intro={texts.intro}>
      <NewDesign />
    </DocumentList>
  )
}
