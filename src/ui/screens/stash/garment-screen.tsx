import { useEffect } from 'preact/hooks'
import { useLocation, useParams } from 'wouter-preact'
import { type Garment, kindOf } from '../../../core/garments/index.ts'
import { GarmentDrawing } from '../../drawing/garment-drawing.tsx'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { Screen } from '../../parts/screen.tsx'
import { FieldsOf } from '../../parts/use-typed.ts'
import { checkAgain } from '../../state/check-again.ts'
import { pattern } from '../../state/check-state.ts'
import { openCloth } from '../../state/cloth-state.ts'
import { openProjects } from '../../state/projects-state.ts'
import { settings } from '../../state/settings-state.ts'
import { dropGarment, garmentById, openStash, stashOpen } from '../../state/stash-state.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeWithUnit } from '../../words/format.ts'
import { clothWords, garmentTitle } from '../../words/garment-words.ts'
import { words } from '../../words/words.ts'
import { isFlatCloth } from './flat-cloth.ts'
import { Noted } from './garment-noted.tsx'
import { PanelFigures } from './panel-figures.tsx'
import { PhotoStrip } from './photo-strip.tsx'
import { Promises } from './promises.tsx'
import { YieldsSection } from './yields-section.tsx'
import './stash.css'

/** One kept garment: what it is, what it opens into, what she noted, and the way to check it again. */
export function GarmentScreen() {
  const { id = '' } = useParams()
  useEffect(() => {
    void openStash()
    void openCloth()
    void openProjects()
  }, [])
  const garment = garmentById(id)
  if (garment) return <Shown key={id} garment={garment} />
  if (!stashOpen.value) return <p class="loading soft">{words.shell.loading}</p>
  return (
    <Screen title={stashWords.gone} back="/stash">
      <ButtonLink look="main" to="/stash">
        {stashWords.toAll}
      </ButtonLink>
    </Screen>
  )
}

function Shown({ garment }: { garment: Garment }) {
  const [, go] = useLocation()
  const name = garmentTitle(garment)
  return (
    <Screen
      title={name}
      back="/stash"
      foot={
        <div class="foot-row">
          <Button look="main" icon="check" wide onPress={() => go(checkAgain(garment))}>
            {pattern.value ? stashWords.againFor(pattern.value.name) : stashWords.again}
          </Button>
        </div>
      }
    >
      {!isFlatCloth(garment) && (
        <div class="garment-large">
          <GarmentDrawing
            garment={garment}
            label={words.check.drawingOf(words.garments.kinds[garment.kind])}
          />
        </div>
      )}
      <p>{clothWords(garment)}</p>
      <PhotoStrip garment={garment} />
      <PanelFigures garment={garment} />
      <Promises garment={garment} />
      <YieldsSection garment={garment} />
      <MeasureList garment={garment} />
      <FieldsOf.Provider value={garment.id}>
        <Noted garment={garment} />
      </FieldsOf.Provider>
      <Button
        look="danger"
        icon="remove"
        onPress={() => {
          dropGarment(garment, stashWords.removed(name))
          go('/stash')
        }}
      >
        {stashWords.remove}
      </Button>
    </Screen>
  )
}

/** The tape's figures, and the way to change what the panels hang on. */
function MeasureList({ garment }: { garment: Garment }) {
  const [, go] = useLocation()
  const measured = kindOf(garment.kind).measures.filter(({ id }) => garment.measures[id] !== undefined)
  const change = () => {
    checkAgain(garment)
    go('/check/measures')
  }
  return (
    <section class="stack" aria-labelledby="measures">
      <h2 id="measures">{stashWords.measures}</h2>
      {measured.length > 0 && (
        <dl class="measure-list">
          {measured.map(({ id }) => (
            <div key={id}>
              <dt>{words.garments.measures[id]?.name ?? id}</dt>
              <dd>{writeWithUnit(garment.measures[id] ?? 0, settings.value)}</dd>
            </div>
          ))}
        </dl>
      )}
      <Button icon="measure" onPress={change}>
        {stashWords.measureAgain}
      </Button>
    </section>
  )
}
