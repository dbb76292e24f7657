import { useEffect, useState } from 'preact/hooks'
import type { Savings } from '../../../core/planning/savings/savings.ts'
import type { NewCloth, Project } from '../../../core/stash/project.ts'
import { LengthField } from '../../parts/length-field.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { clothRecords } from '../../state/cloth-state.ts'
import { newClothTold, reckonNewCloth } from '../../state/new-cloth.ts'
import { projectSavings } from '../../state/project-savings.ts'
import { changeProject } from '../../state/projects-state.ts'
import { settings } from '../../state/settings-state.ts'
import { garments } from '../../state/stash-state.ts'
import { projectWords } from '../../words/en/projects.ts'
import { writeArea, writeNumber, writePrice, writeWithUnit } from '../../words/format.ts'

/** Cloth is sold this wide more often than not. Common practice. */
const USUAL_WIDTH = 1400

/** What the project saves: the price of its donors beside that of new cloth, and the cloth kept in use. */
export function SavingsSection({ project }: { project: Project }) {
  const { id, newCloth, pattern, version, size } = project
  const width = newCloth?.width ?? USUAL_WIDTH
  // Open as long as nothing is told, but not shut while she types.
  const [asks] = useState(newCloth === null)
  useEffect(() => reckonNewCloth(project, width), [pattern, version, size, width])
  const told = newClothTold.value
  const lengths = told?.map(({ length }) => length) ?? []
  const saved = projectSavings(project, clothRecords.value, garments.value, told ? lengths : [null])
  const price = newCloth?.pricePerMetre ?? null
  const tell = (part: Partial<NewCloth>) =>
    changeProject(id, { newCloth: { width, pricePerMetre: price, ...part } })
  return (
    <section class="stack" aria-labelledby="saves">
      <h2 id="saves">{projectWords.saves}</h2>
      {told === null ? (
        <p class="soft" role="status">
          {projectWords.newCounting}
        </p>
      ) : (
        <p>{newWords(lengths, saved)}</p>
      )}
      {saved.area > 0 && <Kept saved={saved} />}
      <details class="fold" open={asks}>
        <summary>{projectWords.compareWith}</summary>
        <div class="stack">
          <LengthField
            id="new-width"
            label={projectWords.newWidth}
            value={width}
            units={settings.value}
            onValue={(mm) => mm !== null && tell({ width: mm })}
          />
          <NumberField
            id="new-price"
            label={projectWords.pricePerMetre}
            value={price}
            unit={projectWords.money}
            least={0}
            most={10_000}
            step={1}
            write={writePrice}
            onValue={(pricePerMetre) => tell({ pricePerMetre })}
          />
        </div>
      </details>
    </section>
  )
}

function newWords(lengths: readonly (number | null)[], { newCloth }: Savings): string {
  const whole = lengths.reduce<number | null>(
    (sum, length) => (sum === null || length === null ? null : sum + length),
    0,
  )
  if (whole === null) return projectWords.newTooNarrow
  const length = writeWithUnit(whole, settings.value, 'up')
  return newCloth === null
    ? projectWords.newTakesOnly(length)
    : projectWords.newTakes(length, writePrice(newCloth))
}

function Kept({ saved }: { saved: Savings }) {
  const { spent, newCloth, area, grams } = saved
  const square = writeArea(area, settings.value)
  const difference = spent === null || newCloth === null ? null : newCloth - spent
  return (
    <>
      <p>
        {spent === null ? projectWords.spentUnknown : projectWords.spent(writePrice(spent))}{' '}
        {difference !== null && difference >= 0 && projectWords.saved(writePrice(difference))}
        {difference !== null && difference < 0 && projectWords.costsMore(writePrice(-difference))}
      </p>
      <p>
        {grams === null
          ? projectWords.keptInUse(square)
          : projectWords.keptInUseWeight(square, projectWords.grams(writeNumber(Math.round(grams))))}
      </p>
    </>
  )
}
