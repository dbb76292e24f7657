const FALLBACK = 'en'

/**
 * The first of these that names a language; English if none does. Browsers may tell what is none: `C`, `en_US.UTF-8` or
 * nothing, as the system has it, and every `Intl` constructor throws at those.
 */
export function localeOf(languages: readonly (string | undefined)[]): string {
  for (const language of languages) {
    // As POSIX writes it: language_REGION.charset@variant.
    const tag = (language ?? '').replace(/[.@].*$/, '').replaceAll('_', '-')
    if (isLocale(tag)) return tag
  }
  return FALLBACK
}

/** True for a tag that is well formed and whose language the browser knows; `C` is too short to be one. */
function isLocale(tag: string): boolean {
  try {
    return Intl.NumberFormat.supportedLocalesOf(tag).length > 0
  } catch {
    return false
  }
}

/** The browser's language. */
export const locale: string =
  typeof navigator === 'undefined' ? FALLBACK : localeOf([navigator.language, ...(navigator.languages ?? [])])
