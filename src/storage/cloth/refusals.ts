import type { ReservationFault } from '../../core/stash/reservation-faults.ts'

/** The stash has changed since the screen showed it: nothing was written. */
export class StashRefusal extends Error {
  override name = 'StashRefusal'
}

/** The garment, project, reservation or cut is there no more. */
export class NoLongerThere extends StashRefusal {
  override name = 'NoLongerThere'
}

/** A lay that cannot be reserved as things are now: its pieces stick out, lie on a flaw, or on nothing. */
export class LayNoLongerHolds extends StashRefusal {
  override name = 'LayNoLongerHolds'
  readonly faults: readonly ReservationFault[]

  constructor(message: string, faults: readonly ReservationFault[]) {
    super(message)
    this.faults = faults
  }
}

/** The place of some piece was promised to another project, or cut, in the meantime; `faults` name them all. */
export class ClothTaken extends LayNoLongerHolds {
  override name = 'ClothTaken'
}

/** Something was cut from one of the offcuts, so the cut cannot be taken back any more. */
export class CutAgain extends StashRefusal {
  override name = 'CutAgain'
  /** Project of the later cut. */
  readonly by: string

  constructor(message: string, by: string) {
    super(message)
    this.by = by
  }
}

/** The refusal that these faults call for. There is at least one. */
export function refusalOf(faults: readonly ReservationFault[]): LayNoLongerHolds {
  const lost = faults.find(({ kind }) => kind === 'taken' || kind === 'panel-gone')
  const fault = lost ?? (faults[0] as ReservationFault)
  const Refusal = lost ? ClothTaken : LayNoLongerHolds
  return new Refusal(`${fault.piece}#${fault.copy} on ${fault.panel}: ${sentence(fault)}`, faults)
}

function sentence(fault: ReservationFault): string {
  switch (fault.kind) {
    case 'taken':
      return `taken by ${fault.by.piece}#${fault.by.copy} of project ${fault.by.project}`
    case 'panel-gone':
      return 'the panel is there no more'
    case 'outside':
      return 'sticks out of the panel'
    case 'flaw':
      return 'lies on a flaw'
  }
}
