import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { useLocation } from 'wouter-preact'
import { NOTION_KINDS, type Notion } from '../../../core/notions/index.ts'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { CardLink } from '../../parts/card.tsx'
import { Nothing } from '../../parts/nothing.tsx'
import { Screen } from '../../parts/screen.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { storeUnread } from '../../state/keeper.ts'
import { newNotion, notions, notionsOpen, openNotions, unreadableNotions } from '../../state/notions-state.ts'
import { settings } from '../../state/settings-state.ts'
import { isDemo } from '../../state/stash-state.ts'
import { notionWords } from '../../words/en/notions.ts'
import { stashWords } from '../../words/en/stash.ts'
import { joinFacts } from '../../words/format.ts'
import { kindWords, notionName, ownedWords } from '../../words/notion-words.ts'
import { words } from '../../words/words.ts'
import './notions.css'

const texts = notionWords

/** Elastics, trims and fastenings owned. */
export function NotionsScreen() {
  useEffect(() => void openNotions(), [])
  const choosing = useSignal(false)
  if (!notionsOpen.value) return <p class="loading soft">{words.shell.loading}</p>
  const unreadable = unreadableNotions.value.length
  return (
    <Screen
      title={texts.title}
      back="/stash"
      foot={
        <div class="foot-row">
          <Button look="main" icon="plus" wide onPress={() => (choosing.value = true)}>
            {texts.add}
          </Button>
        </div>
      }
    >
      {notions.value.length === 0 ? (
        <Nothing title={texts.empty} how={texts.emptyHow} unread={storeUnread.value} />
      ) : (
        <List />
      )}
      <ButtonLink to="/strips">{texts.toStrips}</ButtonLink>
      {unreadable > 0 && <p class="soft">{texts.unreadable(unreadable)}</p>}
      {choosing.value && <KindSheet onClose={() => (choosing.value = false)} />}
    </Screen>
  )
}

function KindSheet({ onClose }: { onClose: () => void }) {
  const [, go] = useLocation()
  return (
    <Sheet title={texts.whichKind} onClose={onClose}>
      <ul class="kind-grid">
        {NOTION_KINDS.map((kind) => (
          <li key={kind}>
            <Button wide onPress={() => go(`/notions/${newNotion(kind)}`)}>
              {texts.kinds[kind]}
            </Button>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}

/** By kind, in the order in which kinds are chosen. */
function List() {
  const sorted = NOTION_KINDS.flatMap((kind) => notions.value.filter((notion) => notion.kind === kind))
  return (
    <section aria-label={texts.list}>
      <ul class="stack">
        {sorted.map((notion) => (
          <li key={notion.id}>
            <NotionCard notion={notion} />
          </li>
        ))}
      </ul>
    </section>
  )
}

function NotionCard({ notion }: { notion: Notion }) {
  const { id, kind, width, colour, place } = notion
  const facts = [kindWords(kind, width, settings.value), colour, place]
  return (
    <CardLink to={`/notions/${id}`} title={notionName(notion)}>
      <span class="card-text">
        <b class="card-amount">{ownedWords(notion, settings.value)}</b>
        {`\u00a0· ${joinFacts(facts)} `}
        {isDemo(notion) && <span class="tag">{stashWords.demoMark}</span>}
      </span>
    </CardLink>
  )
}
