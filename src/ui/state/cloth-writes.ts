/** What writes the stash's cloth, with the geometry it needs: fetched in one go when something is reserved, cut or taken back. */
export { reservationFrom } from '../../core/planning/reservation-from.ts'
export { cutPanel } from '../../storage/cloth/cut-panel.ts'
export { reserve, reserveAll } from '../../storage/cloth/reserve.ts'
export { restore } from '../../storage/cloth/restore.ts'
export { undoCut } from '../../storage/cloth/undo-cut.ts'
