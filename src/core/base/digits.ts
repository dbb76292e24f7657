const DIGIT = /\p{Nd}/u

/**
 * The text with the digits 0 to 9 in the place of those of other scripts, and with the Arabic decimal sign as a comma.
 * Every script's digits stand together in Unicode, ten in a row from its nought on (The Unicode Standard 15, 4.6).
 */
export function latinDigits(text: string): string {
  return text
    .replace(/[^\P{Nd}0-9]/gu, (sign) => String(digitValue(sign.codePointAt(0) as number)))
    .replace(/[\u066b\u060c]/g, ',')
}

function digitValue(code: number): number {
  let nought = code
  while (DIGIT.test(String.fromCodePoint(nought - 1))) nought--
  return (code - nought) % 10
}
