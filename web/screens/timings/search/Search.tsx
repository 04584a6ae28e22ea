import { useMemo, useState } from 'react'
import type { Mechanism } from '../../../../src/model/documents/mechanism.ts'
import type { Game, Option } from '../../../../src/model/documents/types.ts'
import {
  followersOf,
  gearingOf,
  inputFaults,
  type SweepResult,
  type searchedOf,
} from '../../../../src/model/timing/index.ts'
import { useDebounced } from '../../../data/useDebounced.ts'
import { Loading } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { useModel } from '../../../worker/useModel.ts'
import { Found } from './Found.tsx'
import { firstMotors, firstTexts, readSearch, sweepOf } from './first.ts'
import { motorsTrouble, SearchFields } from './SearchFields.tsx'

export interface SearchProps {
  mechanism: Mechanism
  index: number
  game: Game
  option: Option
  searched: NonNullable<ReturnType<typeof searchedOf>>
}

/** What is searched, and what was found; nothing of it is part of the document until it is taken over. */
export function Search(props: SearchProps) {
  const { mechanism, option, searched } = props
  const text = words().search
  const [texts, setTexts] = useState(() => firstTexts(searched))
  const [motors, setMotors] = useState(() => firstMotors(searched))
  const read = readSearch(texts)
  const sound = !('errors' in read) && motorsTrouble(motors) === null && inputFaults(mechanism.input).length === 0
  const request = sound ? sweepOf(mechanism, { ...read, motors }) : null
  // Typing asks once it pauses; texts tell apart what is asked for.
  const asked = useDebounced(request === null ? null : JSON.stringify(request), 200)
  const sweep = useModel(
    'sweep',
    useMemo(() => (asked === null ? null : { request: JSON.parse(asked) }), [asked]),
    true,
  )
  const present = gearingOf(searched.input)
  const { stages, drive } = followersOf(option.robot, mechanism.id)
  const limit = 'errors' in read ? null : (read.limits.sourceCurrent ?? null)
  return (
    <div className="stack">
      <p className="soft">{text.how}</p>
      <SearchFields {...{ texts, read, motors, present: present.motors }} onTexts={setTexts} onMotors={setMotors} />
      {sweep.error && <p role="alert">{sweep.error.message}</p>}
      {sweep.data ? (
        <Found
          {...props}
          key={keyOf(sweep.data)}
          result={sweep.data}
          present={present}
          followers={stages.length + (drive ? 1 : 0)}
          limit={limit}
        />
      ) : (
        !sweep.error && sound && <Loading what={text.loading} />
      )}
    </div>
  )
}

/** What is read off belongs to a range and its numbers of motors; other limits leave it. */
const keyOf = ({ points }: SweepResult): string =>
  [points[0]!.reduction, points.at(-1)!.reduction, ...new Set(points.map(({ motors }) => motors))].join(' ')
