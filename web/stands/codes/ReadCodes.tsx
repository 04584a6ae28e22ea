import { useState } from 'react'
import { CodeError, readMessage } from '../../../src/model/scouting/code/index.ts'
import { CodeReader } from '../../codes/CodeReader.tsx'
import { inflated } from '../../codes/pack.ts'
import { isShownPack } from '../../codes/standsPack.ts'
import { useStanding } from '../parts/means.tsx'
import { go } from '../parts/place.ts'
import { Screen } from '../parts/Screen.tsx'
import { moment } from '../words/catalogue.ts'
import { useMoreWords } from '../words/more.ts'
import { applyPack } from './applyPack.ts'

/** Roster, schedule and assignments from the lead's screen, for a phone without a network. */
export default function ReadCodes() {
  const { pit, codes } = useMoreWords()
  const texts = pit.read
  const { database } = useStanding()
  const [told, setTold] = useState<{ done: boolean; text: string } | null>(null)

  const take = async (message: Uint8Array) => {
    try {
      const read = readMessage(message)
      if (read.what === 'rows') return setTold({ done: false, text: texts.rows })
      const pack = await inflated(read.deflated)
      if (!isShownPack(pack)) throw new CodeError('damaged')
      const taken = await applyPack(database, pack)
      if ('not' in taken) return setTold({ done: taken.not === 'same', text: texts.not[taken.not] })
      const { event, matches, serverTime } = taken.pack
      return setTold({ done: true, text: texts.done(event.name, matches.length, moment(Date.parse(serverTime))) })
    } catch (error) {
      return setTold({
        done: false,
        text: error instanceof CodeError ? codes.problem[error.code] : (error as Error).message,
      })
    }
  }
  return (
    <Screen title={texts.title}>
      <p>{texts.intro}</p>
      {told && (
        <p role="status" className={told.done ? 'notice plain' : 'notice'}>
          {told.text}
        </p>
      )}
      {told?.done ? (
        <button type="button" className="strong tall" onClick={() => go({ screen: 'home' })}>
          {texts.home}
        </button>
      ) : (
        <CodeReader texts={codes} onMessage={(message) => void take(message)} onClose={() => go({ screen: 'home' })} />
      )}
    </Screen>
  )
}
