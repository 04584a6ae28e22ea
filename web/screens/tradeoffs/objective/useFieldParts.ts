import { useMemo } from 'react'
import { withOverriddenRobot } from '../../../../src/model/documents/overrides.ts'
import type {
  FieldReferences,
  OptionReference,
  Override,
  StatedField,
} from '../../../../src/model/documents/records.ts'
import { assembleOption } from '../../../data/assemble.ts'
import { type Stored, useAllStored } from '../../../data/documents.ts'

interface Pair {
  option: Stored<'option'>
  design: Stored<'design'>
}

const none: readonly OptionReference[] = []

/** Documents of some references, each asked for once; undefined until all are there. */
function usePairs(pairs: readonly OptionReference[], newest: boolean) {
  const asked = (kind: 'option' | 'design') => {
    const once = new Map(pairs.map((pair) => [`${pair[kind].id}/${pair[kind].revision}`, pair[kind]]))
    return [...once.values()].map(({ id, revision }) => (newest ? { id } : { id, revision }))
  }
  const options = useAllStored('option', newest ? onceById(asked('option')) : asked('option'))
  const designs = useAllStored('design', newest ? onceById(asked('design')) : asked('design'))
  const data = pairs.flatMap((pair): Pair[] => {
    const has = <K extends 'option' | 'design'>(found: readonly Stored<K>[] | undefined, kind: K) =>
      found?.find(({ id, revision }) => id === pair[kind].id && (newest || revision === pair[kind].revision))
    const [option, design] = [has(options.data, 'option'), has(designs.data, 'design')]
    return option && design ? [{ option, design }] : []
  })
  return { data: data.length === pairs.length ? data : null, error: options.error ?? designs.error }
}

const onceById = (references: { id: string }[]) => [...new Map(references.map((one) => [one.id, one])).values()]

export interface FieldParts {
  /** Who plays, as the documents say; null without a field and until it is known. */
  stated: StatedField | null
  error: Error | null
  /** Names of what has a newer revision than the trade-off names. */
  newer: string[]
  /** The field of the newest revisions. */
  newest: FieldReferences | null
}

/** Partners and opponents of a trade-off, with the own numbers of their legs: one robot has one number. */
export function useFieldParts(
  field: FieldReferences | undefined,
  overrides: readonly Override[] | undefined,
): FieldParts {
  const pairs = useMemo(() => (field ? [...field.partners, ...field.opponents] : none), [field])
  const named = usePairs(pairs, false)
  const fresh = usePairs(pairs, true)
  const made = named.data && JSON.stringify(named.data.map(({ option, design }) => [option.revision, design.revision]))
  // biome-ignore lint/correctness/useExhaustiveDependencies: `made` stands for the documents, which are found anew with every drawing
  const stated = useMemo(() => {
    if (!field || !named.data) return null
    const all = named.data.map(({ option, design }) =>
      assembleOption(option.body, withOverriddenRobot(design.body.robot, overrides ?? [])),
    )
    return { partners: all.slice(0, 2), opponents: all.slice(2), level: field.level, replicates: field.replicates }
  }, [field, made, overrides])
  const refer = ({ option, design }: Pair): OptionReference => ({
    option: { id: option.id, revision: option.revision },
    design: { id: design.id, revision: design.revision },
  })
  return {
    stated,
    error: named.error,
    newer: (fresh.data ?? []).flatMap(({ option, design }, index) => [
      ...(option.revision > pairs[index]!.option.revision ? [option.name] : []),
      ...(design.revision > pairs[index]!.design.revision ? [design.name] : []),
    ]),
    newest:
      (field &&
        fresh.data && {
          ...field,
          partners: fresh.data.slice(0, 2).map(refer),
          opponents: fresh.data.slice(2).map(refer),
        }) ||
      null,
  }
}
