import { NativeSelect } from '@mantine/core'
import type { ComparisonRecord, FieldReferences, OptionReference } from '../../../../src/model/documents/records.ts'
import type { Game } from '../../../../src/model/documents/types.ts'
import type { Objective } from '../../../../src/model/match/stated/types.ts'
import { type Stored, useAllStored, useList } from '../../../data/documents.ts'
import { useEdit } from '../../../shell/fields/EditContext.tsx'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { levelsOf } from '../../match/names.ts'
import { firstSetup, lengths } from '../../match/setup.ts'

const objectives = ['points', 'win', 'rankingPoints'] as const

/** What the trade-off is judged by, and for wins and ranking points who else plays. */
export function ObjectiveForm(props: {
  record: ComparisonRecord
  game: Game
  onChange(next: Pick<ComparisonRecord, 'objective' | 'field'>): void
}) {
  const { record, game, onChange } = props
  const { readOnly } = useEdit()
  const text = words().objective
  const found = useWays(game.id)
  const { objective = 'points', field } = record
  const levels = levelsOf(game)
  const judge = (next: Objective) =>
    onChange({ objective: next, field: field ?? (next === 'points' ? undefined : firstField(found.ways, levels)) })
  return (
    <section className="sheet stack" aria-labelledby="objective-title">
      <h2 id="objective-title">{text.title}</h2>
      <p className="soft small">{text.help}</p>
      {found.error && <Trouble title={text.notFound} error={found.error} />}
      <div className="row" style={{ alignItems: 'end' }}>
        <NativeSelect
          label={text.judge}
          value={objective}
          disabled={readOnly || (!field && found.ways.length === 0)}
          data={objectives.map((value) => ({ value, label: text.names[value] }))}
          onChange={(event) => judge(event.currentTarget.value as Objective)}
        />
        {!found.ready && !found.error && <Loading what={text.loading} />}
        {found.ready && found.ways.length === 0 && <p className="soft">{text.noWays}</p>}
      </div>
      {objective !== 'points' && field && (
        <FieldForm
          field={field}
          ways={found.ways}
          levels={levels}
          readOnly={readOnly}
          onChange={(next) => onChange({ objective, field: next })}
        />
      )}
    </section>
  )
}

interface Way {
  name: string
  reference: OptionReference
}

/** The ways to play of a game, at their newest revisions. */
function useWays(game: string): { ways: Way[]; ready: boolean; error: Error | null } {
  const list = useList('option')
  const all = useAllStored('option', list.data ?? [])
  const bodies = (all.data ?? []).filter(({ body }) => body.game === game)
  const designs = useAllStored(
    'design',
    [...new Set(bodies.map(({ body }) => body.design))].map((id) => ({ id })),
  )
  const ways = bodies.flatMap((way): Way[] => {
    const design = designs.data?.find(({ id }) => id === way.body.design)
    return design ? [{ name: way.name, reference: refer(way, design) }] : []
  })
  return {
    ways,
    ready: list.data !== undefined && all.data !== undefined && designs.data !== undefined,
    error: list.error ?? all.error ?? designs.error,
  }
}

const refer = (option: Stored<'option'>, design: Stored<'design'>): OptionReference => ({
  option: { id: option.id, revision: option.revision },
  design: { id: design.id, revision: design.revision },
})

/** At first one way to play of each design on both sides, as on the match screen. */
function firstField(ways: readonly Way[], levels: readonly string[]): FieldReferences | undefined {
  const { ours, level } = firstSetup(
    ways.map(({ reference }) => ({ id: reference.option.id, body: { design: reference.design.id } })),
    levels,
  )
  const all = ours.flatMap((id) => ways.find(({ reference }) => reference.option.id === id)?.reference ?? [])
  if (all.length < 3) return undefined
  return { partners: all.slice(1), opponents: all, level, replicates: lengths.usual }
}

function FieldForm(props: {
  field: FieldReferences
  ways: readonly Way[]
  levels: readonly string[]
  readOnly: boolean
  onChange(next: FieldReferences): void
}) {
  const { field, ways, levels, readOnly, onChange } = props
  const text = words().objective
  const setup = words().match.setup
  const sides = [
    { key: 'partners', legend: text.partners, label: text.partner },
    { key: 'opponents', legend: text.opponents, label: text.opponent },
  ] as const
  return (
    <>
      <div className="columns">
        {sides.map(({ key, legend, label }) => (
          <fieldset key={key} className="stack">
            <legend>{legend}</legend>
            {field[key].map(({ option }, position) => (
              <NativeSelect
                key={label(position + 1)}
                label={label(position + 1)}
                value={option.id}
                disabled={readOnly}
                data={[
                  // One that was removed since is still the one that is played.
                  ...(ways.some(({ reference }) => reference.option.id === option.id)
                    ? []
                    : [{ value: option.id, label: option.id }]),
                  ...ways.map(({ name, reference }) => ({ value: reference.option.id, label: name })),
                ]}
                onChange={(event) => {
                  const way = ways.find(({ reference }) => reference.option.id === event.currentTarget.value)
                  if (!way) return
                  const next = field[key].map((one, index) => (index === position ? way.reference : one))
                  onChange({ ...field, [key]: next })
                }}
              />
            ))}
          </fieldset>
        ))}
      </div>
      <div className="row" style={{ alignItems: 'end' }}>
        {levels.length > 0 && (
          <NativeSelect
            label={setup.level}
            value={field.level ?? ''}
            disabled={readOnly}
            data={[...levels]}
            onChange={(event) => onChange({ ...field, level: event.currentTarget.value })}
          />
        )}
        <NativeSelect
          label={setup.matches}
          value={String(field.replicates)}
          disabled={readOnly}
          data={[
            ...Object.entries(lengths).map(([name, count]) => ({
              value: String(count),
              label: setup[name as keyof typeof lengths],
            })),
            ...(Object.values<number>(lengths).includes(field.replicates)
              ? []
              : [{ value: String(field.replicates), label: String(field.replicates) }]),
          ]}
          onChange={(event) => onChange({ ...field, replicates: Number(event.currentTarget.value) })}
        />
      </div>
    </>
  )
}
