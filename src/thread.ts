/** A thread of its own for work that the thread which listens to people has no time for. */
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';

/** The source of a thread, its file in the bundle, and the module that asks for it. */
export interface ThreadFile {
  readonly source: URL;
  readonly bundled: string;
  readonly here: string;
}

/** Run from the sources (tests), the thread must read TypeScript first. */
function fromSource(file: string, here: string): URL {
  const reader = new URL('./index.mjs', pathToFileURL(createRequire(here).resolve('tsx/esm/api'))).href;
  const script = `import { register } from '${reader}'; register(); await import('${file}');`;
  return new URL(`data:text/javascript,${encodeURIComponent(script)}`);
}

/** Starts it. Idle, it does not keep the process alive. */
export function startThread({ source, bundled, here }: ThreadFile): Worker {
  const started = new Worker(
    here.endsWith('.ts') ? fromSource(source.href, here) : new URL(`./${bundled}`, here),
  );
  started.unref();
  return started;
}
