/*
 * Shows the words that index.html has ready for a browser that is too old. Kept to what browsers of 2016 understand, and
 * apart from the app, which such a browser cannot even read. What is asked for is what the app uses, the latest to come
 * last; README.md has the versions that follow from it.
 */
{
  const supports = (condition) => 'CSS' in window && 'supports' in CSS && CSS.supports(condition)

  const isEnough =
    'noModule' in HTMLScriptElement.prototype &&
    'indexedDB' in window &&
    'structuredClone' in window &&
    'findLast' in Array.prototype &&
    'ListFormat' in Intl &&
    supports('(height: 1dvh)') &&
    supports('selector(:has(*))')

  const notice = document.getElementById('too-old')
  notice.hidden = isEnough
  notice.querySelector('button').onclick = () => {
    notice.hidden = true
  }
}
