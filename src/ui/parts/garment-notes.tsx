import { writePrice } from '../words/format.ts'
import { words } from '../words/words.ts'
import { NumberField } from './number-field.tsx'
import { TextField } from './text-field.tsx'

const MOST_PRICE = 100_000

interface GarmentNotesProps {
  /** Begins the ids of its fields. */
  readonly id: string
  readonly price: number | null
  readonly note: string
  readonly onPrice: (price: number | null) => void
  readonly onNote: (note: string) => void
}

/** What a garment cost and what she wants to remember of it: when it is kept, and whenever she looks at it later. */
export function GarmentNotes({ id, price, note, onPrice, onNote }: GarmentNotesProps) {
  return (
    <>
      <NumberField
        id={`${id}-price`}
        label={words.check.price}
        value={price}
        unit=""
        least={0}
        most={MOST_PRICE}
        step={1}
        write={writePrice}
        onValue={onPrice}
      />
      <TextField id={`${id}-note`} label={words.check.note} lines={3} value={note} onValue={onNote} />
    </>
  )
}
