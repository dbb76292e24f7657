import type { ComponentChildren } from 'preact'
import './settings.css'

export function Section({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <section class="settings-section">
      <h2>{title}</h2>
      {children}
    </section>
  )
}
