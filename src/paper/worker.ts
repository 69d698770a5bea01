/** Writes sheets beside the main thread, one at a time: takes `{paper}`, gives `{made}` or `{fault}`. */
import { parentPort } from 'node:worker_threads';
import type { Reply } from '../pictures/beside.ts';
import type { Paper } from './paper.ts';
import { writePdf } from './pdf.ts';

parentPort?.on('message', ({ paper }: { paper: Paper }) => {
  writePdf(paper).then(
    (made) => parentPort?.postMessage({ made } satisfies Reply, [made.buffer as ArrayBuffer]),
    (error: unknown) => parentPort?.postMessage({ fault: String(error) } satisfies Reply),
  );
});
