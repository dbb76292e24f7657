import { expect, it } from 'vitest'
import { withFraction } from '../../../src/ui/parts/fraction-keys.tsx'

it.each([
  ['20', '20 1/2'],
  ['20 ', '20 1/2'],
  ['20 3/8', '20 1/2'],
  ['', '1/2'],
  ['3/8', '1/2'],
])('a fraction key pressed on “%s” gives “%s”', (typed, result) => {
  expect(withFraction(typed, '1/2')).toBe(result)
})
