import { inflateSync } from 'node:zlib';
import { afterAll, describe, expect, test } from 'vitest';
import { drawBlanket } from '../../src/pictures/blanket.ts';
import { closePictures, toPng } from '../../src/pictures/png.ts';
import { blanketOf } from './views.ts';

afterAll(closePictures);

const svg = (inside: string, width = 200, height = 60) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" font-family="DejaVu Sans">${inside}</svg>`;

/** Width, height, and how many pixels are not paper, of an 8-bit RGBA PNG. */
function read(png: Uint8Array): { width: number; height: number; inked: number } {
  const bytes = Buffer.from(png);
  expect([...bytes.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  const width = bytes.readUInt32BE(16);
  const height = bytes.readUInt32BE(20);
  expect([bytes[24], bytes[25]]).toEqual([8, 6]);
  const parts: Buffer[] = [];
  for (let at = 8; at < bytes.length;) {
    const length = bytes.readUInt32BE(at);
    if (bytes.toString('latin1', at + 4, at + 8) === 'IDAT')
      parts.push(bytes.subarray(at + 8, at + 8 + length));
    at += 12 + length;
  }
  const raw = inflateSync(Buffer.concat(parts));
  const stride = 4 * width;
  const lines = Buffer.alloc(stride * height);
  let inked = 0;
  for (let y = 0; y < height; y++) {
    const filter = raw[y * (stride + 1)]!;
    for (let x = 0; x < stride; x++) {
      const left = x < 4 ? 0 : lines[y * stride + x - 4]!;
      const up = y === 0 ? 0 : lines[(y - 1) * stride + x]!;
      const corner = x < 4 || y === 0 ? 0 : lines[(y - 1) * stride + x - 4]!;
      const [a, b, c] = [up - corner, left - corner, left + up - 2 * corner].map(Math.abs) as [
        number,
        number,
        number,
      ];
      const paeth = a <= b && a <= c ? left : b <= c ? up : corner;
      const guess = [0, left, up, (left + up) >> 1, paeth][filter]!;
      lines[y * stride + x] = (raw[y * (stride + 1) + 1 + x]! + guess) & 255;
    }
    for (let x = 0; x < width; x++) {
      const at = y * stride + 4 * x;
      if (lines[at]! < 200 || lines[at + 1]! < 200 || lines[at + 2]! < 200) inked++;
    }
  }
  return { width, height, inked };
}

describe('from drawing to picture', () => {
  test('a PNG of the size of the drawing', async () => {
    const drawing = drawBlanket(blanketOf(3, 4));
    const { width, height } = read(await toPng(drawing.svg));
    expect({ width, height }).toEqual({ width: drawing.width, height: drawing.height });
  });

  test('text leaves ink, regular and bold, and on nothing there is none', async () => {
    const ink = async (inside: string) => read(await toPng(svg(inside))).inked;
    expect(await ink('')).toBe(0);
    const regular = await ink('<text x="5" y="40" font-size="30">Moss ✓ ▢</text>');
    const bold = await ink('<text x="5" y="40" font-size="30" font-weight="bold">Moss ✓ ▢</text>');
    expect(regular).toBeGreaterThan(300);
    expect(bold).toBeGreaterThan(regular * 1.15);
  });

  test('what cannot be read is a fault, and the next picture is drawn all the same', async () => {
    await expect(toPng('no drawing at all')).rejects.toThrow('not made');
    await expect(toPng(svg('', 4_000_000, 4_000_000))).rejects.toThrow('not made');
    expect(read(await toPng(svg('<rect width="10" height="10"/>'))).inked).toBe(100);
  });

  test('pictures asked for together come in the order asked', async () => {
    const order: number[] = [];
    await Promise.all(
      [30, 20, 10].map((side) => toPng(svg('', side, side)).then((png) => order.push(read(png).width))),
    );
    expect(order).toEqual([30, 20, 10]);
  });

  test('closed and asked again, it starts again', async () => {
    await closePictures();
    await closePictures();
    expect(read(await toPng(svg('', 5, 5))).width).toBe(5);
  });

  test('whoever listens is free while a picture is drawn', async () => {
    await toPng(svg(''));
    const drawing = drawBlanket(blanketOf(20, 25));
    let longest = 0;
    let last = performance.now();
    const clock = setInterval(() => {
      longest = Math.max(longest, performance.now() - last);
      last = performance.now();
    }, 2);
    const from = performance.now();
    await toPng(drawing.svg);
    const took = performance.now() - from;
    clearInterval(clock);
    // On a busy machine the thread may be set aside by others; drawn on this thread, the longest pause would be all of it.
    expect(longest).toBeLessThan(Math.max(200, took * 0.6));
  });
});
