import { latinDigits } from './digits.ts'
import { failed, ok, type Result } from './result.ts'
import { MM_PER_INCH, type Mm } from './units.ts'

/** The unit a bare number is meant in. */
export type LengthUnit = 'cm' | 'in'

/** `up` for sizes to cut, `down` for cloth that is there, `nearest` for everything else. */
export type Rounding = 'nearest' | 'up' | 'down'

/** How to write a length. The decimal sign is passed in: core knows no locale. */
export type LengthStyle =
  | { readonly unit: 'cm'; readonly decimalSign: '.' | ','; readonly rounding: Rounding }
  | { readonly unit: 'in'; readonly denominator: 8 | 16; readonly rounding: Rounding }

/** Tenths of a millimetre in each unit: whole numbers, so that reading rounds once. */
const TENTHS: Readonly<Record<string, number>> = { mm: 10, cm: 100, m: 10_000, in: 254, yd: 9144 }

const UNIT_WORDS: Readonly<Record<string, string>> = {
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  yd: 'yd',
  yard: 'yd',
  yards: 'yd',
}

/** Longer than any cloth here; anything above it is a slip of the finger. */
export const LONGEST_TYPED: Mm = 100_000

const EXAMPLES = 'write it like 36.5, 36,5 cm, 14 1/2 or 14½ in'

/** Float noise that rounding up or down must not take for a real excess, in rounding steps. */
const NOISE = 1e-6

/**
 * Reads a length as people type it: `36,5`, `365 mm`, `14 1/2`, `14-1/2"`, `16⅝ in`, `5/8`. A unit in the
 * text wins over `unit`. Decimal comma and point mean the same; thousands separators are refused.
 * Never negative; zero is a length. `field` is the fault's field.
 */
export function readLength(text: string, unit: LengthUnit, field = 'length'): Result<Mm> {
  const refuse = (message: string) => failed([{ field, message }])
  const plain = spelledPlainly(text)
  if (plain === '') return refuse(`is empty; ${EXAMPLES}`)
  if (/^[-−]/.test(plain)) return refuse('must not be negative')

  const parts = /^([\d.,/ -]+?)\s*([a-z]+\.?|")?$/.exec(plain)
  if (!parts) return refuse(`is not a length; ${EXAMPLES}`)
  const word = parts[2]?.replace(/\.$/, '') ?? unit
  const tenths = TENTHS[UNIT_WORDS[word] ?? '']
  if (tenths === undefined) return refuse(`has the unknown unit "${word}"; use mm, cm, m, in or yd`)

  const number = readNumber(parts[1] ?? '')
  if (typeof number === 'string') return refuse(number)
  const mm = (number.over * tenths) / (number.under * 10)
  if (mm > LONGEST_TYPED) return refuse(`is longer than ${LONGEST_TYPED / 1000} m`)
  return ok(mm)
}

/** The length as a number without its unit: `36.5` or `14 1/2`. Throws if `mm` is not finite. */
export function writeLength(mm: Mm, style: LengthStyle): string {
  if (!Number.isFinite(mm)) throw new RangeError(`cannot write ${mm} as a length`)
  if (style.unit === 'in') {
    return writeFraction(rounded((mm * style.denominator) / MM_PER_INCH, style.rounding), style.denominator)
  }
  return (rounded(mm, style.rounding) / 10).toFixed(1).replace('.', style.decimalSign)
}

/** One spelling for the many signs keyboards offer, digits of other scripts too; vulgar fractions apart from the digits before them. */
function spelledPlainly(text: string): string {
  return latinDigits(text)
    .toLowerCase()
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, (sign) => ` ${sign.normalize('NFKC')}`)
    .replace(/\u2044/g, '/')
    .replace(/[\u2010-\u2013]/g, '-')
    .replace(/[\u2033\u201d\u201c]|''|\u2032\u2032|\u2019\u2019/g, '"')
    .replace(/\s+/g, ' ')
    .replace(/ ?([/-]) ?/g, '$1')
    .trim()
}

/** A number as a quotient of whole numbers, or what is wrong with it. */
function readNumber(text: string): { over: number; under: number } | string {
  const fraction = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(text)
  if (fraction) {
    const [whole, over, under] = [Number(fraction[1] ?? 0), Number(fraction[2]), Number(fraction[3])]
    if (under === 0) return 'has a fraction with nothing below its line'
    if (fraction[1] !== undefined && over >= under) {
      return `has a fraction that is not below 1; ${whole} and ${over}/${under} is written as one number`
    }
    return { over: whole * under + over, under }
  }
  const decimal = /^(\d*)(?:[.,](\d*))?$/.exec(text)
  const digits = (decimal?.[1] ?? '') + (decimal?.[2] ?? '')
  if (digits === '') return `is not a number; ${EXAMPLES}`
  if (digits.length > 15) return 'has more digits than a tape can show'
  return { over: Number(digits), under: 10 ** (decimal?.[2] ?? '').length }
}

function rounded(steps: number, rounding: Rounding): number {
  if (rounding === 'up') return Math.ceil(steps - NOISE) + 0
  if (rounding === 'down') return Math.floor(steps + NOISE) + 0
  return Math.round(steps) + 0
}

/** Sign, whole inches, reduced fraction; the carry into whole inches has happened in `steps`. */
function writeFraction(steps: number, denominator: number): string {
  const whole = Math.floor(Math.abs(steps) / denominator)
  let over = Math.abs(steps) % denominator
  let under = denominator
  while (over > 0 && over % 2 === 0) {
    over /= 2
    under /= 2
  }
  const fraction = over === 0 ? '' : `${over}/${under}`
  const number =
    whole === 0 && fraction !== '' ? fraction : [whole, fraction].filter((p) => p !== '').join(' ')
  return steps < 0 ? `-${number}` : number
}
