/**
 * From a drawing to a PNG, in one worker thread: the encoder takes tens of milliseconds, which the thread that
 * listens to people does not have. The worker starts with the first picture and is started again when it dies.
 */
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { Reply } from './worker.ts';

/** The longest a picture may take; a large blanket takes about a second on a slow machine. */
const TIME_OUT_MS = 20_000;

let worker: Worker | undefined;
/** The picture in hand and those that wait: the next starts when the one before has settled. */
let last: Promise<unknown> = Promise.resolve();

/** Run from the sources (tests), the worker must read TypeScript first. */
function fromSource(here: string): URL {
  const reader = new URL('./index.mjs', pathToFileURL(createRequire(here).resolve('tsx/esm/api'))).href;
  const file = new URL('./worker.ts', here).href;
  const script = `import { register } from '${reader}'; register(); await import('${file}');`;
  return new URL(`data:text/javascript,${encodeURIComponent(script)}`);
}

function start(): Worker {
  const here = import.meta.url;
  const started = new Worker(here.endsWith('.ts') ? fromSource(here) : new URL('./picture-worker.js', here));
  // Idle, it does not keep the process alive.
  started.unref();
  started.on('error', () => undefined); // told to the picture in hand; without a listener it would end the process
  started.once('exit', () => {
    if (worker === started) worker = undefined;
  });
  return started;
}

function draw(svg: string): Promise<Uint8Array> {
  const at = (worker ??= start());
  return new Promise<Uint8Array>((done, failed) => {
    const settle = () => {
      clearTimeout(timer);
      at.off('message', heard).off('error', broke).off('exit', ended);
      at.unref();
    };
    const give = (error: Error) => {
      settle();
      if (worker === at) worker = undefined;
      void at.terminate();
      failed(error);
    };
    const heard = (reply: Reply) => {
      // An encoder that stumbled may have lost hold of its memory: the next picture gets a fresh one.
      if ('fault' in reply) {
        give(new Error(`the picture was not drawn: ${reply.fault}`));
      } else {
        settle();
        done(reply.png);
      }
    };
    const broke = (error: Error) => give(new Error('the picture worker broke', { cause: error }));
    const ended = (code: number) => give(new Error(`the picture worker ended with ${code}`));
    const timer = setTimeout(
      () => give(new Error(`the picture took longer than ${TIME_OUT_MS} ms`)),
      TIME_OUT_MS,
    );
    at.on('message', heard).once('error', broke).once('exit', ended);
    at.ref();
    at.postMessage({ svg });
  });
}

/**
 * The drawing as a PNG in the SVG's own pixels. Pictures are drawn one after the other, in the order asked.
 * Rejects with a plain Error when the SVG cannot be read, the worker dies or the time is up; the next picture
 * then gets a fresh worker.
 */
export function toPng(svg: string): Promise<Uint8Array> {
  const picture = last.then(() => draw(svg));
  last = picture.catch(() => undefined);
  return picture;
}

/** Ends the worker, after the pictures already asked for. A picture asked for later starts it again. */
export async function closePictures(): Promise<void> {
  await last;
  const ending = worker;
  worker = undefined;
  await ending?.terminate();
}
