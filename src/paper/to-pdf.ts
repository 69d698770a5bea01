/** From a sheet to a PDF, in a thread of its own: a hundred pages take seconds, and nobody else waits for them. */
import { Beside } from '../pictures/beside.ts';
import type { Paper } from './paper.ts';

/** The longest a sheet may take: the largest blanket with forty kinds takes some ten seconds on a slow machine. */
const TIME_OUT_MS = 90_000;

const sheets = new Beside<{ readonly paper: Paper }>(
  'the sheet',
  { source: new URL('./worker.ts', import.meta.url), bundled: 'paper-worker.mjs', here: import.meta.url },
  TIME_OUT_MS,
);

/** The sheet as the bytes of a PDF, the same for the same sheet. Rejects with a plain Error where it could not be written. */
export const toPdf = (paper: Paper): Promise<Uint8Array> => sheets.make({ paper });

/** Ends the thread, after the sheets already asked for. */
export const closePaper = (): Promise<void> => sheets.close();
