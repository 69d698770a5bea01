/** Drawing and encoding a picture against the encoder alone, and what the thread that listens notices of it. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as sleep } from 'node:timers/promises';
import { initWasm, Resvg } from '@resvg/resvg-wasm';
import { FONT } from '../src/pictures/font.ts';
import { closePictures, toPng } from '../src/pictures/png.ts';
import { asking } from '../test/asking.ts';
import { largeBlanket } from './blanket.ts';
import { median, sideBySide, timed } from './measure.ts';
import { digits, figuresOf, time, times, type BenchRow } from './table.ts';

/** The encoder in this thread, without a worker. */
async function encoder(): Promise<(svg: string) => Uint8Array> {
  const { resolve } = createRequire(import.meta.url);
  await initWasm(await readFile(resolve('@resvg/resvg-wasm/index_bg.wasm')));
  const fontBuffers = await Promise.all(FONT.files.map((file) => readFile(resolve(file))));
  return (svg) => {
    const resvg = new Resvg(svg, {
      font: { fontBuffers, defaultFontFamily: FONT.family, sansSerifFamily: FONT.family },
      background: '#ffffff',
    });
    const image = resvg.render();
    const png = image.asPng();
    image.free();
    resvg.free();
    return png;
  };
}

/** The longest that the event loop was kept from a timer while `run` went on, in milliseconds. */
export async function longestPause(run: () => Promise<unknown>): Promise<number> {
  const delay = monitorEventLoopDelay({ resolution: 1 });
  // The first samples hold what happened before.
  delay.enable();
  await sleep(20);
  delay.reset();
  await run();
  await sleep(5);
  delay.disable();
  return delay.max / 1e6;
}

const ROUNDS = 9;

export async function bench(): Promise<BenchRow[]> {
  const room = asking();
  await largeBlanket(room);
  const line = '/blanket picture';
  const draw = async (): Promise<string> => {
    await room.ask(line);
    const svg = room.files.at(-1)?.content;
    room.files.length = 0;
    if (svg?.startsWith('<svg') !== true) throw new Error('no picture came of it');
    return svg;
  };
  const svg = await draw();
  const encode = await encoder();
  const png = await toPng(svg);
  if (Buffer.compare(png, encode(svg)) !== 0) throw new Error('the worker gives another picture');
  try {
    const whole = await sideBySide(
      ROUNDS,
      () => timed(async () => toPng(await draw())),
      () => timed(() => encode(svg)),
    );
    const pauses: { working: number; idle: number; here: number }[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      const working = await longestPause(() => toPng(svg));
      const idle = await longestPause(() => sleep(whole.ours.median));
      const here = await longestPause(async () => {
        await sleep(5);
        encode(svg);
      });
      pauses.push({ working, idle, here });
    }
    const middle = (of: (one: (typeof pauses)[number]) => number) => median(pauses.map(of));
    const working = middle((one) => one.working);
    const here = middle((one) => one.here);
    return [
      {
        what: 'A picture of a 20 × 25 blanket: asked, drawn, encoded in the worker',
        ...figuresOf(whole, 'the encoder alone on the same SVG'),
        note: `SVG of ${digits(svg.length / 1000)} kB, PNG of ${digits(png.length / 1000)} kB; both ways give the same bytes.`,
      },
      {
        what: 'Longest pause of the event loop while a picture is encoded in the worker',
        ours: `${time(working)} (idle for as long: ${time(middle((one) => one.idle))})`,
        reference: `${time(here)}: the encoder in the listening thread`,
        ratio: times(working / here),
        note: `Median of ${ROUNDS} pictures; the longest of all was ${time(Math.max(...pauses.map((one) => one.working)))} with the worker, ${time(Math.max(...pauses.map((one) => one.idle)))} idle.`,
      },
    ];
  } finally {
    await closePictures();
  }
}
