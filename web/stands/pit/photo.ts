import type { Photo } from '../../../src/model/scouting/types.ts'
import { madeId } from '../data/ids.ts'

/** Bytes of a photo at most, as the server takes it. */
export const mostPhotoBytes = 200_000

/** Longest side (dots) and quality, tried one after the other until the picture is small enough. */
const tries: readonly (readonly [side: number, quality: number])[] = [
  [1600, 0.8],
  [1280, 0.75],
  [1024, 0.7],
  [800, 0.6],
  [640, 0.5],
  [480, 0.4],
]

async function drawn(picture: ImageBitmap, side: number, quality: number): Promise<Blob> {
  const scale = Math.min(1, side / Math.max(picture.width, picture.height))
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(picture.width * scale))
  canvas.height = Math.max(1, Math.round(picture.height * scale))
  const context = canvas.getContext('2d')!
  // What is transparent would turn black.
  context.fillStyle = '#fff'
  context.fillRect(0, 0, canvas.width, canvas.height)
  context.drawImage(picture, 0, 0, canvas.width, canvas.height)
  return new Promise((resolve, reject) =>
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error('noPicture'))), 'image/jpeg', quality),
  )
}

async function base64(blob: Blob): Promise<string> {
  const bytes = new Uint8Array(await blob.arrayBuffer())
  let text = ''
  for (let at = 0; at < bytes.length; at += 0x2000) text += String.fromCharCode(...bytes.subarray(at, at + 0x2000))
  return btoa(text)
}

/** A picture of the phone's camera as a photo of at most 200 kB. It is drawn anew, so that nothing is left of where and when. */
export async function smallPhoto(file: Blob): Promise<Photo> {
  const picture = await createImageBitmap(file)
  try {
    for (const [side, quality] of tries) {
      const blob = await drawn(picture, side, quality)
      if (blob.size <= mostPhotoBytes) return { id: madeId(), type: 'image/jpeg', data: await base64(blob) }
    }
    throw new Error('tooLarge')
  } finally {
    picture.close()
  }
}

export const addressOf = ({ type, data }: Photo): string => `data:${type};base64,${data}`
