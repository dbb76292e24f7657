import { signal } from '@preact/signals'
import { Router } from 'wouter-preact'
import { useHashLocation } from 'wouter-preact/use-hash-location'
import { words } from '../words/words.ts'
import { NewsBar } from './news-bar.tsx'
import { Places } from './places.tsx'
import { Routes } from './routes.tsx'
import './shell.css'
import { UndoBar } from './undo-bar.tsx'

/** False until what was stored is back: no screen may be told anything before. */
export const ready = signal(false)

/** The frame round every screen. */
export function Shell() {
  return (
    <Router hook={useHashLocation}>
      <button type="button" class="skip" onClick={skipToContent}>
        {words.shell.skip}
      </button>
      <NewsBar />
      {ready.value ? <Routes /> : <Waiting />}
      <UndoBar />
      <Places />
    </Router>
  )
}

/** As long as it takes: an older tab may have to be closed first. */
function Waiting() {
  return (
    <main>
      <p class="loading soft">{words.shell.loading}</p>
    </main>
  )
}

/** A link to #content would be an address of the router's. */
function skipToContent(): void {
  document.querySelector<HTMLElement>('main h1')?.focus()
}
