import { runLay } from './run-lay.ts'

// The seconds she grants begin when the process does: loading counts.
process.exitCode = await runLay(process.argv.slice(2), performance.timeOrigin, {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
})
