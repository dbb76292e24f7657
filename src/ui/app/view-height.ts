import { afterPress, followPresses } from '../parts/press.ts'

/** A phone's keyboard takes at least this share of the screen's height. */
const KEYBOARD_SHARE = 0.22

/**
 * Keeps the app as high as what is in view above the phone's keyboard, and marks the root while the keyboard is up.
 * The tallest view seen at this width stands for "no keyboard", since some phones shrink the page itself. Nothing moves
 * while a finger is on its way to a click.
 */
export function followViewHeight(): void {
  const view = window.visualViewport
  if (!view) return
  const root = document.documentElement
  let width = 0
  let tallest = 0
  followPresses()
  const followNow = () => {
    if (view.scale > 1.05) return
    if (view.width !== width) {
      width = view.width
      tallest = 0
    }
    tallest = Math.max(tallest, view.height)
    root.style.setProperty('--view-height', `${view.height}px`)
    const typing = isTyping() && view.height < tallest * (1 - KEYBOARD_SHARE)
    if (root.toggleAttribute('data-typing', typing)) showField()
    // Phones that lay the keyboard over the page scroll it up as well; the app itself never scrolls.
    window.scrollTo(0, 0)
  }
  const follow = () => afterPress(followNow)
  view.addEventListener('resize', follow)
  document.addEventListener('focusin', follow)
  document.addEventListener('focusout', () => requestAnimationFrame(follow))
  follow()
}

/** Brings the field being typed, with its label and notes, clear of the keyboard and of what sticks to the top. */
function showField(): void {
  document.activeElement?.closest('.field')?.scrollIntoView({ block: 'nearest' })
}

function isTyping(): boolean {
  const field = document.activeElement
  return field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement
}
