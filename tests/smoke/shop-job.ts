import { ENTER, type Engine, until } from './engine.ts'

/** A T-shirt as the tape gives it, cm, in the order the app asks. */
const T_SHIRT = ['54', '54', '70', '46', '24', '9', '22']

/**
 * A check in the shop, from the first opening to the garment in the stash: what to make, the measures typed, stretch, the
 * verdict, keeping; then all of it again from what is stored. Rejects at the first thing that does not come.
 */
export async function shopJob(engine: Engine, url: string, say: (step: string) => void): Promise<void> {
  const hand = handOf(engine)
  await engine.resize(360, 640)
  await engine.go(url)
  await hand.sees('Is it worth cutting?')
  await tellsOfNoTrouble(engine)
  say('opens')

  await hand.press("//button[contains(., 'ports top')]")
  await hand.press("//label[normalize-space()='S']")
  await hand.press("//button[normalize-space()='Use this']")
  await hand.press("//button[normalize-space()='T-shirt']")
  await hand.press("//input[@id=//label[normalize-space()='Chest']/@for]")
  for (const figure of T_SHIRT) await engine.type(await engine.focused(), figure + ENTER)
  await hand.sees('What is the cloth like?')
  say('measures are typed')

  await hand.type('Stretch across', '55')
  await hand.type('Stretch along', '25')
  await hand.press("//a[normalize-space()='Verdict']")
  await hand.sees('to spare', 'main')
  say('the verdict is there')

  await hand.press("//button[normalize-space()='Keep it']")
  await hand.sees('Kept in your stash')
  await engine.go(`${url}#/stash`)
  await engine.run('location.reload()')
  await hand.sees('T-shirt', 'main')
  say('it is in the stash, after a reload too')

  await until('the service worker', async () =>
    (await engine.run('return navigator.serviceWorker?.controller?.state')) === 'activated' ? true : null,
  )
  await tellsOfNoTrouble(engine)
  say('it is kept for use without network')
}

/** What a hand and an eye do, each as soon as it can be done. */
function handOf(engine: Engine) {
  const seen = (xpath: string) => until(xpath, async () => (await engine.find(xpath))[0] ?? null)
  return {
    /** Until the text is there, as one element's own: a heading unless said. */
    sees: (text: string, within = 'h1') =>
      until(`“${text}”`, async () => {
        const script = `return [...document.querySelectorAll('${within}')].some((e) => e.innerText.includes(${JSON.stringify(text)}))`
        return (await engine.run(script)) === true ? true : null
      }),
    /** Again until it works: what is still moving, or covered by what is going, cannot be pressed. */
    press: (xpath: string) =>
      until(`pressing ${xpath}`, async () => {
        const element = await seen(xpath)
        await engine.run("arguments[0].scrollIntoView({ block: 'center' })", element)
        await engine.click(element)
        return true
      }),
    async type(label: string, text: string) {
      await engine.type(await seen(`//input[@id=//label[normalize-space()='${label}']/@for]`), text)
    },
  }
}

/** The browser must not be told to be too old, nor the store to be out of order. */
async function tellsOfNoTrouble(engine: Engine): Promise<void> {
  const shown = "[role='alert']:not([hidden])"
  const said = await engine.run(
    `return [...document.querySelectorAll(${JSON.stringify(shown)})].map((e) => e.innerText)`,
  )
  if (Array.isArray(said) && said.length > 0) throw new Error(`the app says: ${said.join(' | ')}`)
}
