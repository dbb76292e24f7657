import { useState } from 'preact/hooks'
import { useLocation } from 'wouter-preact'
import type { DonorRow } from '../../../core/planning/donors/row.ts'
import { oddMeasures } from '../../../core/planning/doubt.ts'
import type { Project } from '../../../core/stash/project.ts'
import { SmallCloth } from '../../drawing/small-cloth.tsx'
import { Button } from '../../parts/button.tsx'
import { CardLink } from '../../parts/card.tsx'
import { Icon } from '../../parts/icon.tsx'
import { LongList } from '../../parts/long-list.tsx'
import { bestWays, type RoleSearch, rankedRows, type Way } from '../../state/donors.ts'
import { reserveBlocked } from '../../state/reserve-together.ts'
import { settings } from '../../state/settings-state.ts'
import { garmentById } from '../../state/stash-state.ts'
import { projectWords } from '../../words/en/projects.ts'
import { stashWords } from '../../words/en/stash.ts'
import { joinFacts, writeArea, writeList, writePrice } from '../../words/format.ts'
import { garmentTitle } from '../../words/garment-words.ts'
import { meantWords } from '../../words/match-words.ts'
import { roleName } from '../../words/project-words.ts'
import { words } from '../../words/words.ts'

/** Rows shown at first: of a role by itself, and of each of several. */
const FIRST_ROWS = { alone: 12, beside: 5 }

const texts = projectWords.donors

interface RoleRowsProps {
  readonly project: Project
  readonly search: RoleSearch
  readonly titled: boolean
}

/** What was found for one role, best first; what cannot yield it is folded away. */
export function RoleRows({ project, search, titled }: RoleRowsProps) {
  const rows = rankedRows(search)
  const useless = rows.filter(isUseless)
  const hopeful = rows.filter((row) => !isUseless(row))
  const [isAll, setAll] = useState(false)
  const [isOpen, setOpen] = useState(false)
  const shown = isAll ? hopeful : hopeful.slice(0, titled ? FIRST_ROWS.beside : FIRST_ROWS.alone)
  if (rows.length === 0) return null
  return (
    <section class="stack" aria-label={roleName(search.role)}>
      {titled && <h2>{roleName(search.role)}</h2>}
      {bestWays(search).map((way) => (
        <Blocked key={way.map(({ garment }) => garment).join()} project={project} search={search} way={way} />
      ))}
      <DonorCards project={project} search={search} rows={shown} />
      {hopeful.length > shown.length && (
        <Button onPress={() => setAll(true)}>{texts.more(hopeful.length - shown.length)}</Button>
      )}
      {useless.length > 0 && (
        <details class="useless" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
          <summary>{texts.useless(useless.length)}</summary>
          {isOpen && <DonorCards project={project} search={search} rows={useless} />}
        </details>
      )}
    </section>
  )
}

/** Proved, on a garment whose figures raise no question. */
function isUseless({ verdict, donor }: DonorRow): boolean {
  const garment = garmentById(donor)
  return verdict === 'cannot' && (garment === null || oddMeasures(garment).length === 0)
}

interface DonorCardsProps {
  readonly project: Project
  readonly search: RoleSearch
  readonly rows: readonly DonorRow[]
}

function DonorCards({ project, search, rows }: DonorCardsProps) {
  if (rows.length === 0) return null
  return (
    <LongList
      items={rows}
      keyOf={({ donor }) => donor}
      draw={(row) => <DonorCard project={project} search={search} row={row} />}
    />
  )
}

interface BlockedProps {
  readonly project: Project
  readonly search: RoleSearch
  readonly way: Way
}

function Blocked({ project, search, way }: BlockedProps) {
  const [, go] = useLocation()
  const take = async () => {
    if (await reserveBlocked(project, way, search)) go(`/projects/${project.id}`)
  }
  return (
    <div class="together stack">
      <p>{texts.blocked(writeList(way.map(({ garment }) => garmentTitle(garmentById(garment)))))}</p>
      <Button icon="keep" wide onPress={() => void take()}>
        {texts.takeTogether}
      </Button>
    </div>
  )
}

const ICONS = { fits: 'fits', cannot: 'cannot', 'not-found': 'open', undecided: 'running' } as const

interface DonorCardProps {
  readonly project: Project
  readonly search: RoleSearch
  readonly row: DonorRow
}

function DonorCard({ project, search: { role, state }, row }: DonorCardProps) {
  const garment = garmentById(row.donor)
  if (!garment) return null
  // Nobody looks at it any longer.
  const verdict = row.verdict === 'undecided' && state !== 'running' ? 'not-found' : row.verdict
  const odd = oddMeasures(garment)
  const hanging = odd.length > 0 ? texts.odd[verdict] : verdict === 'fits' ? hangingWords(row) : null
  return (
    <CardLink
      to={`/projects/${project.id}/lay/${garment.id}/${encodeURIComponent(role)}`}
      title={garmentTitle(garment)}
      picture={<SmallCloth garment={garment} />}
    >
      <span class={`donor-verdict donor-${hanging ? 'doubt' : verdict}`}>
        <Icon name={hanging ? 'doubt' : ICONS[verdict]} size={20} />
        {hanging ?? texts.verdicts[verdict]}
      </span>
      <span class="card-text">{factsOf(row, garment.cloth.colour)}</span>
    </CardLink>
  )
}

/** What a lay found hangs on; null: nothing. */
function hangingWords({ stretch, match }: DonorRow): string | null {
  if (match?.as === 'other') return texts.otherCloth(meantWords(match.meant))
  return stretch === null || stretch === 'sure' ? null : texts.hanging[stretch]
}

function factsOf({ verdict, waste, price, missing, match }: DonorRow, colour: string): string {
  return joinFacts([
    colour,
    verdict === 'fits' ? texts.waste(writeArea(waste, settings.value)) : '',
    verdict === 'not-found' ? texts.missing(`${Math.round(missing * 100)} ${words.parts.percent}`) : '',
    match?.as === 'not-said' ? texts.clothNotSaid(meantWords(match.meant)) : '',
    verdict !== 'fits' && match?.as === 'other' ? words.verdict.match.tag : '',
    price === null ? '' : stashWords.cost(writePrice(price)),
  ])
}
