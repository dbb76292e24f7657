import type { KindId } from './kind.ts'

/** A kind of garment with measures: every kind but a drawn outline. */
export type MeasuredKind = Exclude<KindId, 'free-outline'>

/** The two measures that tell one garment of a kind from another at a glance. */
export interface TellingMeasures {
  readonly width: string
  readonly length: string
}

export const TELLING_MEASURES: Readonly<Record<MeasuredKind, TellingMeasures>> = {
  't-shirt': { width: 'chest', length: 'body-length' },
  'tank-top': { width: 'chest', length: 'body-length' },
  'long-sleeved-top': { width: 'chest', length: 'body-length' },
  'button-shirt': { width: 'chest', length: 'body-length' },
  'straight-skirt': { width: 'hip-width', length: 'skirt-length' },
  'flared-skirt': { width: 'hem-width', length: 'skirt-length' },
  dress: { width: 'chest', length: 'body-length' },
  trousers: { width: 'hip-width', length: 'inseam' },
  leggings: { width: 'hip-width', length: 'inseam' },
  cloth: { width: 'cloth-width', length: 'cloth-length' },
}

export const MEASURED_KINDS = Object.keys(TELLING_MEASURES) as readonly MeasuredKind[]
