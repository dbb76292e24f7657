import { readCut, readOffcut } from '../../readers/model/cut.ts'
import { readGarment } from '../../readers/model/garment.ts'
import { readNotion } from '../../readers/model/notion.ts'
import { readUnfinishedPattern } from '../../readers/model/pattern.ts'
import { readPhoto } from '../../readers/model/photo.ts'
import { readProject } from '../../readers/model/project.ts'
import { readReservation } from '../../readers/model/reservation.ts'
import type { Gates } from '../../storage/open-store.ts'

/** What a stored record of each kind must pass to be read. */
export const RECORD_GATES: Omit<Gates<never>, 'draft'> = {
  garments: readGarment,
  patterns: readUnfinishedPattern,
  projects: readProject,
  reservations: readReservation,
  cuts: readCut,
  offcuts: readOffcut,
  notions: readNotion,
  photos: readPhoto,
}
