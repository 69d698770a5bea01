/** Draws pictures beside the main thread, one at a time: takes `{svg}`, gives `{made}` or `{fault}`. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { parentPort } from 'node:worker_threads';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import type { Reply } from './beside.ts';
import { FONT } from './font.ts';

const { resolve } = createRequire(import.meta.url);

async function ready(): Promise<Uint8Array[]> {
  await initWasm(await readFile(resolve('@resvg/resvg-wasm/index_bg.wasm')));
  return Promise.all(FONT.files.map((file) => readFile(resolve(file))));
}
const fonts = ready();

async function encode(svg: string): Promise<Uint8Array> {
  const resvg = new Resvg(svg, {
    font: { fontBuffers: await fonts, defaultFontFamily: FONT.family, sansSerifFamily: FONT.family },
    background: '#ffffff',
  });
  try {
    const image = resvg.render();
    // What is not freed stays in the encoder's memory for good.
    try {
      return image.asPng();
    } finally {
      image.free();
    }
  } finally {
    resvg.free();
  }
}

parentPort?.on('message', ({ svg }: { svg: string }) => {
  encode(svg).then(
    (png) => {
      const copy = Uint8Array.from(png);
      parentPort?.postMessage({ made: copy } satisfies Reply, [copy.buffer]);
    },
    (error: unknown) => parentPort?.postMessage({ fault: String(error) } satisfies Reply),
  );
});
