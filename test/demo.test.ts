/** The demo's story, played as `npm run demo` plays it: every line is answered, and it ends as it says. */
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { play } from '../demo/play.ts';
import { STORY, type Scene } from '../demo/story.ts';
import { closePaper, toPdf } from '../src/paper/to-pdf.ts';
import { closePictures, toPng } from '../src/pictures/png.ts';

const newFolder = () => mkdtempSync(join(tmpdir(), 'demo-'));
afterAll(closePictures);
afterAll(closePaper);

async function played(story: readonly Scene[]) {
  const said: string[] = [];
  const pictures = newFolder();
  const result = await play(story, {
    data: newFolder(),
    pictures,
    makers: { toPng, toPdf },
    say: (text) => said.push(text),
  });
  return { ...result, pictures, said: said.join('\n') };
}

it('makes its throw from swatch to border, with every line answered and its pictures left', async () => {
  const { asked, refused, files, said } = await played(STORY);
  expect(refused).toEqual([]);
  expect(asked).toBe(STORY.filter((scene) => 'ask' in scene).length);
  expect(said).not.toMatch(/undefined|NaN|\[object|[⟦⟧]/);
  const pngs = files.filter((file) => file.endsWith('.png'));
  for (const what of ['furrow-chart-us', 'bean-rows', 'board'])
    expect(
      pngs.some((file) => file.endsWith(`-${what}.png`)),
      what,
    ).toBe(true);
  for (const file of pngs)
    expect(readFileSync(file).subarray(0, 8).toString('latin1')).toBe('\x89PNG\r\n\x1a\n');
  // Twenty squares were wanted, twenty are in, and each has its place.
  expect(said).toContain('20 of 22 motifs made (2 spares among them)');
  expect(said.slice(said.indexOf('/host assemble'))).not.toMatch(/^ {4}Strip \d: .*\?/m);
}, 60_000);

it('says which line was refused, and goes on', async () => {
  const { asked, refused, said } = await played([
    { ask: 'willow: /motif show name:furrow' },
    { ask: 'willow: /stitches row shape:diagonal size:12 row:9' },
  ]);
  expect(asked).toBe(2);
  expect(refused).toHaveLength(1);
  expect(refused[0]).toContain('/motif show name:furrow');
  expect(said).toContain('Row 9 has 19 stitches');
});
