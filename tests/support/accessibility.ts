import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/**
 * Expects no violation of axe's rules (WCAG 2 A and AA, and its own best practices) on the page once it stands: what was
 * tapped for may still be on its way. A violation is told with the elements it is in.
 */
export async function expectNoAxeViolations(page: Page): Promise<void> {
  await expect.poll(() => axeViolations(page)).toEqual([])
}

/** The violations in words, one a rule. */
export async function axeViolations(page: Page): Promise<string[]> {
  // evaluate() is not bound by the page's content security policy; a <script> would be.
  await page.evaluate(AXE)
  const results = await page.evaluate(() => (window as unknown as WithAxe).axe.run(document))
  return results.violations.map(inWords)
}

interface WithAxe {
  axe: { run(root: Document): Promise<AxeResults> }
}

function inWords({ id, help, nodes }: AxeResults['violations'][number]): string {
  return `${id}: ${help} (${nodes.map((node) => node.target.join(' ')).join('; ')})`
}
