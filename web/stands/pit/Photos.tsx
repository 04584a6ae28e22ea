import { useId, useState } from 'react'
import type { Photo } from '../../../src/model/scouting/types.ts'
import { useMoreWords } from '../words/more.ts'
import { addressOf, smallPhoto } from './photo.ts'
import './pit.css'

/** Photos of one visit at most. */
const mostPhotos = 4

/** Photos made with the phone's camera or chosen from it, made small at once. */
export function Photos(props: { photos: readonly Photo[]; change(photos: readonly Photo[]): void }) {
  const { photos } = props
  const texts = useMoreWords().pit.visit
  const id = useId()
  const [trouble, setTrouble] = useState(false)
  const [busy, setBusy] = useState(false)
  const take = async (files: readonly File[]) => {
    setBusy(true)
    setTrouble(false)
    const made: Photo[] = []
    for (const file of files.slice(0, mostPhotos - photos.length)) {
      try {
        made.push(await smallPhoto(file))
      } catch {
        setTrouble(true)
      }
    }
    setBusy(false)
    props.change([...photos, ...made])
  }
  return (
    <fieldset className="choice photos">
      <legend>{texts.photos}</legend>
      <p className="soft small">{texts.photosHelp}</p>
      <ul>
        {photos.map((photo, index) => (
          <li key={photo.id}>
            <img src={addressOf(photo)} alt={texts.photo(index + 1)} />
            <button type="button" onClick={() => props.change(photos.filter((each) => each !== photo))}>
              {texts.drop(index + 1)}
            </button>
          </li>
        ))}
      </ul>
      {photos.length < mostPhotos && (
        <div className="field">
          <label htmlFor={id}>{texts.addPhoto}</label>
          <input
            id={id}
            type="file"
            accept="image/*"
            multiple
            disabled={busy}
            onChange={(event) => {
              const files = [...(event.currentTarget.files ?? [])]
              event.currentTarget.value = ''
              void take(files)
            }}
          />
        </div>
      )}
      {trouble && (
        <p role="alert" className="wrong">
          {texts.photoTrouble}
        </p>
      )}
    </fieldset>
  )
}
