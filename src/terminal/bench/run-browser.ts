import { readdir } from 'node:fs/promises'
import type { Browser, Page } from 'playwright-core'
import type { CheckAnswer, CheckQuestion } from '../../core/planning/check.ts'
import { withBuiltApp } from './browser/built-app.ts'
import { type Host, serveFolder } from './browser/host.ts'
import { type OfflineFigure, offlineRow, runOffline } from './browser/run-offline.ts'
import { runStash, type StashFigure, stashRow } from './browser/run-stash.ts'
import { demoQuestions } from './demo.ts'
import { type Answered, type AnswerFigure, answerFigure, answerRow } from './figures.ts'
import { CHECK_SECONDS } from './run-checks.ts'

export interface CheckFigure {
  /** How many times slower than it is Chromium was made to run. */
  readonly slowed: number
  readonly checks: AnswerFigure
}

export interface BrowserFigures {
  readonly offline?: OfflineFigure
  readonly stash?: StashFigure
  readonly checks?: readonly CheckFigure[]
}

/** What can be measured alone. */
const PARTS = ['offline', 'stash', 'checks'] as const

const RATES = [1, 4]
/** Of the sample, to stay short. */
const EVERY = 4

/** What is asked of the browser. */
export interface BrowserAsked {
  /** One of `PARTS`; absent: all of them. */
  readonly only: string | undefined
  /** Every check, not a sample. */
  readonly every: boolean
  /** In the stash. */
  readonly garments: number
}

/** Figures of the built app in Chromium, each said when it is there. */
export async function runBrowser(
  { only, every, garments }: BrowserAsked,
  say: (line: string) => void,
): Promise<BrowserFigures> {
  if (only !== undefined && !(PARTS as readonly string[]).includes(only))
    throw new Error(`In a browser there is only ${PARTS.join(', ')}, no “${only}”.`)
  const isAsked = (part: (typeof PARTS)[number]) => only === undefined || only === part
  return withBuiltApp(async (folder, browser) => {
    const figures: { -readonly [K in keyof BrowserFigures]: BrowserFigures[K] } = {}
    if (isAsked('offline')) {
      figures.offline = await runOffline(folder, browser)
      say(offlineRow(figures.offline))
    }
    if (isAsked('stash')) {
      figures.stash = await runStash(folder, browser, garments)
      say(stashRow(figures.stash))
    }
    if (isAsked('checks')) {
      figures.checks = await runCheckRates(folder, browser, !every)
      for (const { slowed, checks } of figures.checks)
        say(answerRow(`Chromium, ${slowed} times slower`, checks))
    }
    return figures
  })
}

/**
 * The shop checks of the demo data, by the built solver worker's own script. It runs on the page's thread, for Chromium
 * slows down no other; each check may take as much longer as the browser is slowed down.
 */
async function runCheckRates(folder: string, browser: Browser, sample: boolean): Promise<CheckFigure[]> {
  const questions = demoQuestions(true).filter((_, i) => !sample || i % EVERY === 0)
  const host = await serveFolder(folder)
  try {
    const page = await solverPage(host, folder, browser)
    const devtools = await page.context().newCDPSession(page)
    const figures: CheckFigure[] = []
    for (const slowed of RATES) {
      await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowed })
      figures.push({ slowed, checks: answerFigure(await answersOf(page, questions, CHECK_SECONDS * slowed)) })
    }
    return figures
  } finally {
    await host.close()
  }
}

async function solverPage({ address }: Host, folder: string, browser: Browser): Promise<Page> {
  const page = await browser.newPage()
  await page.goto(address)
  await loadSolver(page, new URL(await workerFile(folder), page.url()).href)
  return page
}

async function workerFile(folder: string): Promise<string> {
  const file = (await readdir(`${folder}/assets`)).find((name) => name.startsWith('solver.worker'))
  if (file === undefined) throw new Error('the build has no solver worker')
  return `./assets/${file}`
}

/** What the worker's script leaves on the page: its way in, and here its way out. */
interface SolverPage {
  onmessage: (event: { data: unknown }) => void
  postMessage: (reply: { type: string; answer?: unknown; message?: string }) => void
  lastReply: { type: string; answer?: unknown; message?: string }
}

/** Has the page itself play the worker: replies are kept instead of posted. */
function loadSolver(page: Page, script: string): Promise<void> {
  return page.evaluate(async (address) => {
    const here = globalThis as unknown as SolverPage
    here.postMessage = (reply) => {
      here.lastReply = reply
    }
    await import(address)
  }, script)
}

async function answersOf(
  page: Page,
  questions: readonly CheckQuestion[],
  seconds: number,
): Promise<Answered[]> {
  const answers: Answered[] = []
  for (const asks of questions) {
    const job = { kind: 'check', asks, limits: { seed: 1, seconds } }
    const { ms, reply } = await page.evaluate((data) => {
      const here = globalThis as unknown as SolverPage
      const start = performance.now()
      here.onmessage({ data })
      return { ms: performance.now() - start, reply: here.lastReply }
    }, job)
    const result = reply.answer as { ok: boolean; value: CheckAnswer } | undefined
    if (!result?.ok) throw new Error(`the solver failed: ${JSON.stringify(reply)}`)
    answers.push({ verdict: result.value.lay.verdict, ms })
  }
  return answers
}
