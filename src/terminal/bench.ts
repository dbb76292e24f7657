import { readBenchArguments } from './bench/arguments.ts'
import { runBench } from './bench/run-bench.ts'

const asked = readBenchArguments(process.argv.slice(2))
if (asked.ok) await runBench(asked.value, console.log)
else {
  for (const { field, message } of asked.faults) console.error(`${field}: ${message}`)
  process.exitCode = 2
}
