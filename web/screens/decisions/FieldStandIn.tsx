import { NativeSelect } from '@mantine/core'
import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { type Stored, useAllStored, useList } from '../../data/documents.ts'
import { Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'

/** Copies of the record's designs that were written back from the field. */
export function useFieldCopies({ snapshot }: DecisionRecord, asked: boolean) {
  const list = useList('design')
  const all = useAllStored('design', asked ? (list.data ?? []) : [])
  const robots = new Set(snapshot.options.map(({ robot }) => robot.id))
  return {
    data: list.data && all.data?.filter(({ body }) => body.fromField && robots.has(body.fromField.design.id)),
    error: list.error ?? all.error,
    refetch: () => {
      void list.refetch()
      all.refetch()
    },
  }
}

/** Which copy stands in for its design; nothing where there is none. */
export function FieldStandIn(props: {
  decision: DecisionRecord
  copies: ReturnType<typeof useFieldCopies>
  chosen: Stored<'design'> | undefined
  onChoose(id: string | null): void
}) {
  const texts = words().fieldCheck.again
  const { decision, copies, chosen } = props
  if (copies.error && !copies.data)
    return <Trouble title={texts.notLoaded} error={copies.error} retry={copies.refetch} />
  if (!copies.data || copies.data.length === 0) return null
  const designOf = ({ body }: Stored<'design'>) =>
    decision.snapshot.options.find(({ robot }) => robot.id === body.fromField?.design.id)?.robot.name ?? ''
  return (
    <>
      <NativeSelect
        label={texts.label}
        description={texts.help}
        maw={480}
        value={chosen?.id ?? ''}
        data={[
          { value: '', label: texts.newest },
          ...copies.data.map(({ id, name, body: { fromField } }) => ({
            value: id,
            label: texts.copy(name, fromField!.team, fromField!.matches, fromField!.practice),
          })),
        ]}
        onChange={({ currentTarget: { value } }) => props.onChoose(value === '' ? null : value)}
      />
      {chosen && <p>{texts.stands(chosen.name, designOf(chosen))}</p>}
    </>
  )
}
