import { Link, useLocation } from 'wouter-preact'
import { Icon, type IconName } from '../parts/icon.tsx'
import { words } from '../words/words.ts'

const PLACES: readonly { to: string; icon: IconName; name: string }[] = [
  { to: '/', icon: 'check', name: words.shell.check },
  { to: '/stash', icon: 'stash', name: words.shell.stash },
  { to: '/projects', icon: 'projects', name: words.shell.projects },
  { to: '/patterns', icon: 'patterns', name: words.shell.patterns },
  { to: '/settings', icon: 'settings', name: words.shell.settings },
]

/** Screens with work at the thumb of their own. */
const WORKING = /^\/check\/|^\/patterns\/[^/]+\/(edit|piece)/

/** Screens that the stash leads to. */
const OF_THE_STASH = /^\/(notions|strips)\b/

/** Where one can go, in reach of the thumb. A step of the check, and a pattern being typed, have their own foot instead. */
export function Places() {
  const [location] = useLocation()
  if (WORKING.test(location)) return null
  return (
    <nav class="places" aria-label={words.shell.places}>
      <ul>
        {PLACES.map(({ to, icon, name }) => (
          <li key={to}>
            <Link href={to} aria-current={isAt(location, to) ? 'page' : undefined}>
              <Icon name={icon} />
              {name}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  )
}

function isAt(location: string, place: string): boolean {
  if (place === '/') return location === '/' || location === '/open-check' || location === '/look-for'
  if (place === '/stash' && OF_THE_STASH.test(location)) return true
  return location === place || location.startsWith(`${place}/`)
}
