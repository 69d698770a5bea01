/**
 * From a drawing to a PNG, in one worker thread: the encoder takes tens of milliseconds, which the thread that
 * listens to people does not have.
 */
import { Beside } from './beside.ts';

/** The longest a picture may take; a large blanket takes about a second on a slow machine. */
const TIME_OUT_MS = 20_000;

const pictures = new Beside<{ readonly svg: string }>(
  'the picture',
  { source: new URL('./worker.ts', import.meta.url), bundled: 'picture-worker.mjs', here: import.meta.url },
  TIME_OUT_MS,
);

/**
 * The drawing as a PNG in the SVG's own pixels. Pictures are drawn one after the other, in the order asked.
 * Rejects with a plain Error when the SVG cannot be read, the worker dies or the time is up; the next picture
 * then gets a fresh worker.
 */
export const toPng = (svg: string): Promise<Uint8Array> => pictures.make({ svg });

/** Ends the worker, after the pictures already asked for. A picture asked for later starts it again. */
export const closePictures = (): Promise<void> => pictures.close();
