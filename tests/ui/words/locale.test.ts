import { afterEach, describe, expect, it, vi } from 'vitest'
import { localeOf } from '../../../src/ui/words/locale.ts'

afterEach(() => {
  vi.unstubAllGlobals()
  vi.resetModules()
})

async function formatIn(language: string): Promise<typeof import('../../../src/ui/words/format.ts')> {
  vi.resetModules()
  vi.stubGlobal('navigator', { language, languages: [language] })
  return import('../../../src/ui/words/format.ts')
}

describe('the browser’s language', () => {
  it.each([
    [['de-AT'], 'de-AT'],
    [['C'], 'en'],
    [[''], 'en'],
    [[undefined], 'en'],
    [['en_US'], 'en-US'],
    [['de_CH.UTF-8'], 'de-CH'],
    [['ca_ES@valencia'], 'ca-ES'],
    [['POSIX', 'fr-FR'], 'fr-FR'],
    [['C', 'nl'], 'nl'],
    [[], 'en'],
  ])('is, of %j, %s', (languages, locale) => {
    expect(localeOf(languages)).toBe(locale)
  })

  it.each(['C', '', 'en_US', 'x', 'de-DE', 'ar-EG', 'fa-IR', 'bn-BD', 'my-MM', 'zh-Hant-u-nu-hanidec'])(
    'lets figures be written in one kind of digits: %j',
    async (language) => {
      const format = await formatIn(language)
      expect(format.writeNumber(1234.5)).toMatch(/^1234[.,]5$/)
      expect(format.writePrice(3.5)).toMatch(/^3[.,]50$/)
      expect(format.writeDay(0)).not.toMatch(/[^\P{Nd}0-9]/u)
      expect(format.writeBytes(1_500_000)).toMatch(/^1[.,]5 MB$/)
      expect(['.', ',']).toContain(format.decimalSign)
    },
  )

  it('reads numbers typed in other digits', async () => {
    const { readNumber } = await formatIn('ar-EG')
    expect(['٤٠', '۳۵', '١٢٫٥', '12,5', 'x'].map(readNumber)).toEqual([40, 35, 12.5, 12.5, null])
  })

  it('tells the units to begin with, also where it is odd', async () => {
    const { firstSettings } = await import('../../../src/ui/state/settings-state.ts')
    expect(firstSettings(localeOf(['en_US'])).units).toBe('in')
    expect(firstSettings(localeOf(['C'])).units).toBe('cm')
  })
})
