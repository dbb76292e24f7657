import { runLay } from './run-lay.ts'

process.exitCode = await runLay(process.argv.slice(2), Date.now(), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
})
