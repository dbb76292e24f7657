import { useSignal } from '@preact/signals'
import { useId, useRef } from 'preact/hooks'
import type { Garment } from '../../../core/garments/index.ts'
import { Button } from '../../parts/button.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { dropPhoto, keepPhoto, pictureOf } from '../../state/photos.ts'
import { stashWords } from '../../words/en/stash.ts'
import { garmentTitle } from '../../words/garment-words.ts'
import './photo-strip.css'

/** The garment's photos, to look at large, to add to and to take away. */
export function PhotoStrip({ garment }: { garment: Garment }) {
  const [failed, large] = [useSignal(false), useSignal<string | null>(null)]
  const name = garmentTitle(garment)
  const add = async (files: readonly File[]) => {
    failed.value = false
    for (const file of files) if (!(await keepPhoto(garment.id, file))) failed.value = true
  }
  return (
    <section class="stack" aria-label={stashWords.photos}>
      {garment.photos.length > 0 && (
        <ul class="photo-strip">
          {garment.photos.map((photo, k) => (
            <li key={photo}>
              <button
                type="button"
                class="photo-button"
                aria-label={stashWords.photoOf(name, k + 1)}
                onClick={() => (large.value = photo)}
              >
                <Picture photo={photo} />
              </button>
            </li>
          ))}
        </ul>
      )}
      <TakePhoto onFiles={(files) => void add(files)} />
      {failed.value && (
        <p class="field-error" role="alert">
          {stashWords.photoFailed}
        </p>
      )}
      {large.value !== null && (
        <Sheet title={name} onClose={() => (large.value = null)} full>
          <div class="photo-large">
            <Picture photo={large.value} />
          </div>
          <Button
            look="danger"
            icon="remove"
            onPress={() => {
              void dropPhoto(garment.id, large.value ?? '', stashWords.photoRemoved)
              large.value = null
            }}
          >
            {stashWords.photoRemove}
          </Button>
        </Sheet>
      )}
    </section>
  )
}

/** The first photo, small, for a list; nothing when there is none. */
export function FirstPhoto({ garment }: { garment: Garment }) {
  const [first] = garment.photos
  return first === undefined ? null : (
    <span class="photo-first">
      <Picture photo={first} />
    </span>
  )
}

function Picture({ photo }: { photo: string }) {
  const address = pictureOf(photo)
  return address ? <img src={address} alt="" loading="lazy" decoding="async" /> : <span class="photo-waits" />
}

/** The phone's own camera or gallery. */
function TakePhoto({ onFiles }: { onFiles: (files: readonly File[]) => void }) {
  const id = useId()
  const input = useRef<HTMLInputElement>(null)
  return (
    <>
      <input
        ref={input}
        id={id}
        class="unseen"
        type="file"
        accept="image/*"
        multiple
        tabIndex={-1}
        aria-label={stashWords.photoAdd}
        onChange={(event) => {
          // A list of its own: the field's goes empty with it.
          onFiles([...(event.currentTarget.files ?? [])])
          event.currentTarget.value = ''
        }}
      />
      <Button icon="photo" onPress={() => input.current?.click()}>
        {stashWords.photoAdd}
      </Button>
    </>
  )
}
