/** A press that ends in a click has its click within this time of the pointer's going up, ms. */
const CLICK_COMES_MS = 400

let pressed = false
let waiting: (() => void)[] = []
let timer = 0

/**
 * Does this once no finger is on its way to a click: a button that moves between the pointer's down and up, because a
 * field was left or the keyboard went, never gets its click. At once when nothing is pressed.
 */
export function afterPress(act: () => void): void {
  if (pressed) waiting.push(act)
  else act()
}

/** Begins to watch for presses. On touch screens a field is left only after the pointer is up, just before the click. */
export function followPresses(): void {
  const all = { capture: true, passive: true }
  addEventListener('pointerdown', begin, all)
  // A later task than the handlers of the click itself.
  addEventListener('click', () => setTimeout(end), all)
  addEventListener('pointercancel', end, all)
  addEventListener(
    'pointerup',
    () => {
      timer = window.setTimeout(end, CLICK_COMES_MS)
    },
    all,
  )
  addEventListener('blur', end)
}

function begin(): void {
  clearTimeout(timer)
  pressed = true
}

function end(): void {
  clearTimeout(timer)
  pressed = false
  const acts = waiting
  waiting = []
  for (const act of acts) act()
}
