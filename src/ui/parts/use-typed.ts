import { createContext } from 'preact'
import { useContext, useEffect, useReducer, useRef } from 'preact/hooks'
import { leaveIn, leftIn } from '../state/unfinished.ts'
import { afterPress } from './press.ts'
import { type Spelling, TypedText } from './typed-text.ts'

/**
 * Of what thing the fields inside speak, such as a notion's id: what stands in them and cannot be part of it yet is kept
 * under that name. Without one nothing is kept beyond the screen.
 */
export const FieldsOf = createContext<string | null>(null)

interface TypedProps<V> {
  readonly id: string
  readonly value: V
  readonly spelling: Spelling<V>
  /** Text to begin with in place of the value. */
  readonly unread?: string | undefined
  /** True if the owner of the value stores what this text stands for; false: the text itself has to be kept. */
  readonly isStored: (text: string) => boolean
  readonly onValue: (value: V, text: string) => void
}

export interface Typing {
  readonly text: string
  readonly focused: boolean
  readonly type: (text: string) => void
  readonly enter: () => void
  readonly leave: (event: FocusEvent) => void
}

/** The text of a field while it is drawn: see TypedText for whose turn it is to change it. */
export function useTyped<V>({ id, value, spelling, unread, isStored, onValue }: TypedProps<V>): Typing {
  const of = useContext(FieldsOf)
  const [, draw] = useReducer<number, void>((count) => count + 1, 0)
  const left = of === null ? '' : leftIn(`${of}/${id}`)
  const held = useRef<{ field: TypedText<V>; spelling: Spelling<V> } | null>(null)
  held.current ??= { field: new TypedText(value, unread || left || spelling.write(value)), spelling }
  const { field } = held.current
  field.told(value, spelling)
  if (held.current.spelling !== spelling) {
    held.current.spelling = spelling
    field.rewrite(spelling)
  }
  const keep = () => {
    if (of !== null) leaveIn(`${of}/${id}`, isStored(field.text) ? '' : field.text)
  }
  // What was taken from the field's owner, as by adding it to a list, is unfinished no more.
  useEffect(keep, [of, id, field.text])
  const type = (text: string) => {
    const said = field.type(text, spelling)
    keep()
    draw()
    if (said !== undefined) onValue(said, text)
  }
  // An owner that holds the value for this screen only has to hear again of what was left here.
  useEffect(() => {
    if (left !== '' && spelling.read(left) !== undefined) type(left)
  }, [])
  return {
    text: field.text,
    focused: field.focused,
    type,
    enter: () => {
      field.enter()
      draw()
    },
    leave: ({ currentTarget }) =>
      afterPress(() => {
        if (currentTarget === document.activeElement) return
        field.leave(spelling)
        draw()
      }),
  }
}
