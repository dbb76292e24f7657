import { latinDigits } from '../../core/base/digits.ts'
import { type LengthStyle, type Rounding, writeLength } from '../../core/base/length.ts'
import type { Mm, Percent } from '../../core/base/units.ts'
import type { Settings } from '../../storage/stores/settings.ts'
import { locale } from './locale.ts'
import { words } from './words.ts'

/** How she wants lengths written. */
export type Units = Pick<Settings, 'units' | 'inchFraction'>

/**
 * Decimal signs, lists and days are as the browser's language has them. Digits are always 0 to 9: lengths, sizes and the
 * words beside them have no others, and a screen with two kinds is hard to read.
 */
const DIGITS = { numberingSystem: 'latn' } as const
const plain = new Intl.NumberFormat(locale, { ...DIGITS, maximumFractionDigits: 1, useGrouping: false })
const hundredths = new Intl.NumberFormat(locale, { ...DIGITS, maximumFractionDigits: 2, useGrouping: false })
const bothHundredths = new Intl.NumberFormat(locale, {
  ...DIGITS,
  minimumFractionDigits: 2,
  maximumFractionDigits: 2,
  useGrouping: false,
})
const day = new Intl.DateTimeFormat(locale, { ...DIGITS, dateStyle: 'medium' })
const list = new Intl.ListFormat(locale, { type: 'conjunction' })
const anyOf = new Intl.ListFormat(locale, { type: 'disjunction' })
export const decimalSign: '.' | ',' = plain.formatToParts(1.5).some(({ value }) => value === ',') ? ',' : '.'

/** To one decimal, with the browser's own decimal sign. */
export function writeNumber(value: number): string {
  return plain.format(value)
}

/** To two decimals, as far as there are any. */
export function writeHundredths(value: number): string {
  return hundredths.format(value)
}

/** What something cost, in whatever money: “4”, “3.50”. */
export function writePrice(value: number): string {
  return Number.isInteger(value) ? plain.format(value) : bothHundredths.format(value)
}

/** Decimal comma and point both count, and the digits of every script; null when it is no number. */
export function readNumber(text: string): number | null {
  const value = Number(latinDigits(text).trim().replace(',', '.'))
  return text.trim() === '' || !Number.isFinite(value) ? null : value
}

export function writePercent(value: Percent): string {
  return `${writeNumber(value)} ${words.parts.percent}`
}

/** A length without its unit, as it stands in a field. A whole number of cm drops its decimal. */
export function writeBare(mm: Mm, units: Units, rounding: Rounding = 'nearest'): string {
  return writeLength(mm, styleOf(units, rounding)).replace(/[.,]0$/, '')
}

/** A length with its unit. Spare cloth and the like round down, so that nothing is promised that is not there. */
export function writeWithUnit(mm: Mm, units: Units, rounding: Rounding = 'nearest'): string {
  return `${writeBare(mm, units, rounding)} ${unitName(units)}`
}

export function unitName({ units }: Units): string {
  return units === 'cm' ? words.parts.cm : words.parts.inch
}

/** Above this a metric length is written in cm. */
const MOST_IN_MM: Mm = 20

/** A small length, rounded down as spare cloth must be: metric ones in mm, where a sewist thinks of seams. */
export function writeSmall(mm: Mm, units: Units, rounding: Rounding = 'down'): string {
  if (units.units !== 'cm' || mm >= MOST_IN_MM) return writeWithUnit(mm, units, rounding)
  const whole = rounding === 'down' ? Math.floor(mm + 1e-6) : Math.round(mm)
  return `${writeNumber(whole)} ${words.parts.mm}`
}

/** “linen · shelf”: facts side by side, those left out that are empty; a dot never begins a line. */
export function joinFacts(facts: readonly string[]): string {
  return facts.filter((fact) => fact.trim() !== '').join('\u00a0· ')
}

/** “a, b or c” in the browser's language. */
export function writeAny(items: readonly string[]): string {
  return anyOf.format(items)
}

/** “a, b and c” in the browser's language. */
export function writeList(items: readonly string[]): string {
  return list.format(items)
}

function styleOf({ units, inchFraction }: Units, rounding: Rounding): LengthStyle {
  return units === 'cm'
    ? { unit: 'cm', decimalSign, rounding }
    : { unit: 'in', denominator: inchFraction, rounding }
}

/** mm² in a square of the unit cloth is sold by: the metre, or the yard of 0.9144 m (the international yard of 1959). */
export function squareUnit({ units }: Units): { readonly name: string; readonly area: number } {
  return units === 'cm'
    ? { name: words.parts.squareMetre, area: 1000 ** 2 }
    : { name: words.parts.squareYard, area: 914.4 ** 2 }
}

/** An area, mm², as cloth is sold: “0.62 m²”. */
export function writeArea(area: number, units: Units): string {
  const square = squareUnit(units)
  return together(`${bothHundredths.format(area / square.area)} ${square.name}`)
}

/** A figure and its unit stay on one line. */
export function together(figure: string): string {
  return figure.replaceAll(' ', '\u00a0')
}

/** A size on the device in kB, MB or GB. */
export function writeBytes(bytes: number): string {
  if (bytes < 1e6) return `${writeNumber(bytes / 1e3)} ${words.parts.kB}`
  if (bytes < 1e9) return `${writeNumber(bytes / 1e6)} ${words.parts.MB}`
  return `${writeNumber(bytes / 1e9)} ${words.parts.GB}`
}

/** A day as the browser's language writes it. */
export function writeDay(ms: number): string {
  return day.format(ms)
}
