import { useAllStored, useList } from '../../data/documents.ts'
import { Cautions } from '../../shell/Cautions.tsx'
import { Empty, Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { ImportFile } from '../documents/ImportFile.tsx'
import { useListActions } from '../documents/useListActions.ts'
import { BringParts } from './csv/BringParts.tsx'
import { atmosphereWords } from './gauge.ts'
import { NewPart } from './NewPart.tsx'
import { partKinds } from './numbers.ts'
import { PartScreen } from './PartScreen.tsx'
import { PartTable } from './PartTable.tsx'
import '../designs/designs.css'
import './parts.css'

/** The parts shelf, or one of its parts: one address and one piece of script for both. */
export default function PartsScreen(props: { id?: string | undefined }) {
  return props.id === undefined ? <Shelf /> : <PartScreen id={props.id} />
}

function Shelf() {
  const texts = words().parts.list
  const list = useList('part')
  const stored = useAllStored(
    'part',
    (list.data ?? []).map(({ id }) => ({ id })),
  )
  const { duplicate, remove, removed, trouble } = useListActions('part', '/parts')
  const error = list.error ?? stored.error
  const parts = stored.data?.map(({ body }) => body.part).toSorted((a, b) => a.name.localeCompare(b.name))
  return (
    <div className="stack wide">
      <div className="stack">
        <h1>{texts.title}</h1>
        <p>{texts.intro}</p>
        <p className="soft">
          {texts.demo} {texts.absolute(atmosphereWords())}
        </p>
      </div>
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
      {removed && (
        <p role="status">
          {words().documents.list.removed(removed.name)}{' '}
          <button type="button" className="opens" onClick={() => void remove(removed, true)}>
            {words().documents.list.back}
          </button>
        </p>
      )}
      {error ? (
        <Trouble
          title={texts.trouble}
          error={error}
          retry={() => {
            void list.refetch()
            stored.refetch()
          }}
        />
      ) : !list.data || !parts ? (
        <Loading what={texts.what} />
      ) : parts.length === 0 ? (
        <Empty title={texts.empty}>
          <p>{texts.emptyHow}</p>
        </Empty>
      ) : (
        partKinds.map((kind) => (
          <PartTable
            key={kind}
            kind={kind}
            parts={parts.filter((part) => part.kind === kind)}
            onCopy={(part) => void duplicate(part)}
            onRemove={(part) => void remove(part)}
          />
        ))
      )}
      <NewPart />
      <BringParts />
      <ImportFile kind="part" href="/parts" noun={words().documents.kinds.part} />
      <Cautions which={['air', 'spinning', 'energy']} />
    </div>
  )
}
