/**
 * Enter (the keyboard's "next") moves to the next figure of the same form and selects it;
 * after the last one the form is submitted.
 */
export function enterNext(event: KeyboardEvent): void {
  if (event.key !== 'Enter') return
  const input = event.currentTarget as HTMLInputElement
  const form = input.form
  if (!form) return
  event.preventDefault()
  const figures = [...form.querySelectorAll<HTMLInputElement>('input[data-figure]')]
  const next = figures[figures.indexOf(input) + 1]
  if (next) {
    next.focus()
    next.select()
  } else {
    input.blur()
    form.requestSubmit()
  }
}
