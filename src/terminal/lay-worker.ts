import { parentPort, workerData } from 'node:worker_threads'
import { answerUntil } from './answer-until.ts'
import type { LayTask } from './run-workers.ts'

const { problem, seed, endsAt } = workerData as LayTask
parentPort?.postMessage(answerUntil(problem, seed, endsAt))
