/** A handout of more than a hundred pages: what the thread that listens notices of it. Invented data. */
import { afterAll, describe, expect, it } from 'vitest';
import { closePaper, toPdf } from '../../src/paper/to-pdf.ts';
import type { Paper } from '../../src/paper/paper.ts';
import { asking } from '../asking.ts';
import { longestHold, slowness } from '../attack/largest.ts';

/** Nobody is kept waiting longer by one thing, on the machine on which it was set. */
const MOST_MS = 30;
const KINDS = 12;
const COLOURS = ['moss', 'sand', 'clay', 'plum'];

afterAll(closePaper);

const pagesIn = (pdf: Uint8Array) =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type \/Page\b(?!s)/g)!.length;

describe('a handout of a hundred pages', () => {
  // What else runs on the machine is no fault of ours: a bound that holds once holds.
  it('is made without keeping anybody waiting', { timeout: 60_000, retry: 2 }, async () => {
    const { ask, sheets } = asking();
    const names = Array.from({ length: KINDS }, (_, kind) => `kind ${kind}`);
    for (const [kind, name] of names.entries()) {
      const stripes = Array.from(
        { length: 24 },
        (_, at) => `4 rows ${COLOURS[(at + kind) % COLOURS.length]!}`,
      );
      const define = `/motif define name:"${name}" shape:diagonal size:48 gauge:13x10 hook:5mm`;
      expect(await ask(`${define} colours:"${stripes.join(', ')}"`)).toMatchObject({ ok: true });
    }
    await ask(`/blanket start name:big kinds:"${names.join(', ')}" columns:12 rows:14 border:"sc hdc dc"`);
    // The first sheet starts the thread that writes, and whatever else is made but once.
    await ask('/motif handout');
    await toPdf([...sheets.values()].at(-1)!);
    let paper: Paper | undefined;
    let pdf: Uint8Array | undefined;
    const longest = await longestHold(async () => {
      const answer = await ask('/blanket handout print:large');
      paper = sheets.get(answer.files[0]!);
      pdf = await toPdf(paper!);
    });
    expect(pagesIn(pdf!)).toBeGreaterThan(100);
    expect(longest).toBeLessThan(MOST_MS * slowness());
  });
});
