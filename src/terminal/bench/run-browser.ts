import { execFileSync } from 'node:child_process'
import { mkdtemp, readdir, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium, type Page } from 'playwright-core'
import { preview } from 'vite'
import type { CheckAnswer, CheckQuestion } from '../../core/planning/check.ts'
import { findChromium } from './chromium.ts'
import { demoQuestions } from './demo.ts'
import { type Answered, type AnswerFigure, answerFigure } from './figures.ts'
import { CHECK_SECONDS } from './run-checks.ts'

export interface BrowserFigure {
  /** How many times slower than it is Chromium was made to run. */
  readonly slowed: number
  readonly checks: AnswerFigure
}

const RATES = [1, 4]
/** Of the sample, to stay short. */
const EVERY = 4

/**
 * The shop checks of the demo data in Chromium, by the built solver worker's own script. It runs on the page's
 * thread, for Chromium slows down no other; each check may take as much longer as the browser is slowed down.
 */
export async function runBrowser(sample: boolean): Promise<BrowserFigure[]> {
  const executablePath = findChromium()
  if (executablePath === null) throw new Error('No Chromium found: install one, or set CHROMIUM_PATH.')
  const questions = demoQuestions(true).filter((_, i) => !sample || i % EVERY === 0)
  const outDir = await mkdtemp(join(tmpdir(), 'cutworth-bench-'))
  execFileSync('npx', [
    '--no-install',
    'vite',
    'build',
    '--outDir',
    outDir,
    '--emptyOutDir',
    '--logLevel',
    'warn',
  ])
  const server = await preview({ build: { outDir }, preview: { port: 0, strictPort: false } })
  const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] })
  try {
    const page = await browser.newPage()
    await page.goto(server.resolvedUrls?.local[0] as string)
    await loadSolver(page, new URL(await workerFile(outDir), page.url()).href)
    const devtools = await page.context().newCDPSession(page)
    const figures: BrowserFigure[] = []
    for (const slowed of RATES) {
      await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowed })
      figures.push({ slowed, checks: answerFigure(await answersOf(page, questions, CHECK_SECONDS * slowed)) })
    }
    return figures
  } finally {
    await browser.close()
    await server.close()
    await rm(outDir, { recursive: true, force: true })
  }
}

async function workerFile(outDir: string): Promise<string> {
  const file = (await readdir(join(outDir, 'assets'))).find((name) => name.startsWith('solver.worker'))
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
