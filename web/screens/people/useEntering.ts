import { useState } from 'react'
import { problemsOf } from '../../data/api.ts'
import { words } from '../../words/catalogue.ts'
import { usualName } from './Fields.tsx'

export type FieldName = 'nickname' | 'passphrase' | 'device'

/** What somebody types who comes in, and the sentence beside each field that is empty when it is sent. */
export function useEntering(asked: readonly FieldName[]) {
  const texts = words().people
  const [values, setValues] = useState({ nickname: '', passphrase: '', device: usualName() })
  const [tried, setTried] = useState(false)
  const needed = {
    nickname: texts.neededNickname,
    passphrase: texts.neededPassphrase,
    device: texts.neededDevice,
  }
  const isEmpty = (name: FieldName) => asked.includes(name) && values[name].trim() === ''
  return {
    values,
    field: (name: FieldName, error: Error | null = null) => ({
      value: values[name],
      onChange: (value: string) => setValues((now) => ({ ...now, [name]: value })),
      error: tried && isEmpty(name) ? needed[name] : sentenceFor(name, error),
    }),
    /** Calls when nothing is missing. */
    send: (then: () => void) => {
      setTried(true)
      if (!asked.some(isEmpty)) then()
    },
  }
}

/** What the server says of one field. */
const sentenceFor = (name: string, error: Error | null): string | null =>
  problemsOf(error).find(({ path }) => path[0] === name)?.message ?? null
