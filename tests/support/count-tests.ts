import { readFileSync } from 'node:fs'

/** The part of the test runner's JSON report that matters here. */
interface Report {
  readonly numPassedTests: number
  readonly numFailedTests: number
  readonly testResults: readonly { status: string; assertionResults: readonly unknown[] }[]
}

/** Prints `passed failed` for a report; a file that failed before its first test counts as one failure. */
const report = JSON.parse(readFileSync(process.argv[2] ?? '', 'utf8')) as Report
const unloaded = report.testResults.filter(
  (file) => file.status === 'failed' && file.assertionResults.length === 0,
)
console.log(report.numPassedTests, report.numFailedTests + unloaded.length)
