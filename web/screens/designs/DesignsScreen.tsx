import { Link } from 'wouter'
import { words } from '../../words/catalogue.ts'
import { DocumentList } from '../documents/DocumentList.tsx'
import { NewDesign } from './NewDesign.tsx'

export default function DesignsScreen() {
  const texts = words().designs.list
  return (
    <DocumentList kind="design" href="/designs" title={texts.title} noun={texts.noun} intro={texts.intro}>
      <NewDesign />
      <p>
        <Link href="/parts">{words().parts.list.link}</Link>
      </p>
    </DocumentList>
  )
}
