import type { JobRequest } from './protocol.ts'
import { runJob } from './run-job.ts'

self.onmessage = ({ data }: MessageEvent<JobRequest>) => {
  runJob(
    data,
    (reply) => self.postMessage(reply),
    () => performance.now(),
  )
}
