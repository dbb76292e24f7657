import type { Mm } from '../../core/base/units.ts'
import type { Garment } from '../../core/garments/garment.ts'
import { polygonArea } from '../../core/geometry/index.ts'
import { type Savings, savings, type UsedDonor } from '../../core/planning/savings/savings.ts'
import type { Project } from '../../core/stash/project.ts'
import type { ClothRecords } from '../../core/stash/taken.ts'

/** What the project saves, by what is reserved for it and cut for it. `newLengths`: of new cloth, one a role. */
export function projectSavings(
  project: Project,
  records: ClothRecords,
  garments: readonly Garment[],
  newLengths: readonly (Mm | null)[],
): Savings {
  const laid = [...records.reservations, ...records.cuts]
  const mine = laid.filter((record) => record.project === project.id)
  const donors = [...new Set(mine.map(({ garment }) => garment))].map((id): UsedDonor => {
    const garment = garments.find((each) => each.id === id)
    return {
      price: garment?.price ?? null,
      gramsPerSquareMetre: garment?.gramsPerSquareMetre ?? null,
      area: areaOn(id, mine),
      areaOfAll: areaOn(id, laid),
    }
  })
  return savings(donors, newLengths, project.newCloth?.pricePerMetre ?? null)
}

type Laid = ClothRecords['reservations'][number] | ClothRecords['cuts'][number]

function areaOn(garment: string, laid: readonly Laid[]): number {
  const pieces = laid.filter((record) => record.garment === garment).flatMap((record) => record.pieces)
  return pieces.reduce((sum, { outline }) => sum + Math.abs(polygonArea(outline)), 0)
}
