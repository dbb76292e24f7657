import type { GarmentKind, KindId } from './kind.ts'
import { buttonShirt } from './kinds/button-shirt.ts'
import { cloth } from './kinds/cloth.ts'
import { dress } from './kinds/dress.ts'
import { flaredSkirt } from './kinds/flared-skirt.ts'
import { freeOutline } from './kinds/free-outline.ts'
import { leggings } from './kinds/leggings.ts'
import { longSleevedTop } from './kinds/long-sleeved-top.ts'
import { straightSkirt } from './kinds/straight-skirt.ts'
import { tShirt } from './kinds/t-shirt.ts'
import { tankTop } from './kinds/tank-top.ts'
import { trousers } from './kinds/trousers.ts'

const KINDS: Readonly<Record<KindId, GarmentKind>> = {
  't-shirt': tShirt,
  'tank-top': tankTop,
  'long-sleeved-top': longSleevedTop,
  'button-shirt': buttonShirt,
  'straight-skirt': straightSkirt,
  'flared-skirt': flaredSkirt,
  dress,
  trousers,
  leggings,
  cloth,
  'free-outline': freeOutline,
}

/** The description of a kind. */
export function kindOf(id: KindId): GarmentKind {
  return KINDS[id]
}
