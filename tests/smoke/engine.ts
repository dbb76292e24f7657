/** An element's key in what an engine gives and takes (W3C WebDriver, 12.1 "Elements"). */
export const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf'

/** The enter key, as typed text has it (W3C WebDriver, 15.4.2 "Keyboard actions"). */
export const ENTER = '\uE007'

/** A browser that does what WebDriver has commands for. Each rejects with what the engine says. */
export interface Engine {
  /** Its name and version, as it gives them. */
  readonly name: string
  go(url: string): Promise<void>
  /** Ids of the elements that an XPath finds. */
  find(xpath: string): Promise<readonly string[]>
  click(element: string): Promise<void>
  type(element: string, text: string): Promise<void>
  /** Id of the element in focus. */
  focused(): Promise<string>
  /** What the script, the body of a function, returns; its first argument is the element, if one is given. */
  run(script: string, element?: string): Promise<unknown>
  resize(width: number, height: number): Promise<void>
  close(): Promise<void>
}

/** What WebDriver gives for an element. */
export type Found = Readonly<Record<typeof ELEMENT, string>>

/** The arguments of a script. */
export function argumentsOf(element: string | undefined): readonly Found[] {
  return element === undefined ? [] : [{ [ELEMENT]: element }]
}

/** Only to end a wait for what never comes. */
const PATIENCE_MS = 90_000

/** Asks until the answer is no longer null. `what` is for the message when it never is. */
export async function until<T>(what: string, ask: () => Promise<T | null> | T | null): Promise<T> {
  const end = Date.now() + PATIENCE_MS
  let last: unknown = null
  while (Date.now() < end) {
    try {
      const answer = await ask()
      if (answer !== null) return answer
    } catch (error) {
      last = error
    }
    await new Promise((later) => setTimeout(later, 100))
  }
  throw new Error(`waited in vain for ${what}${last ? `: ${last}` : ''}`)
}
