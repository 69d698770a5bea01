/** The chart of a saved motif, as every answer and sheet draws it. */
import { defined } from '../../src/core/base/defined.ts';
import type { Reader } from '../../src/core/base/reader.ts';
import { planOf, runsOf } from '../../src/core/yarn/motif.ts';
import { trueSizeOf } from '../../src/core/yarn/true-size.ts';
import { drawChart } from '../../src/pictures/chart.ts';
import type { Drawing } from '../../src/pictures/drawing.ts';
import { looksOf, madeUpOf } from '../../src/projects/looks.ts';
import type { MakerDoc, Motif } from '../../src/projects/schema.ts';

/** Drawn in her colours, true to its gauge where that is known; `done` are its finished rows. */
export function chartOf(
  doc: MakerDoc,
  motif: Motif,
  { reader, done }: { readonly reader: Reader; readonly done?: number | undefined },
): Drawing {
  const looks = looksOf(doc, [...coloursOf(motif), motif.name], motif.looks);
  return drawChart(
    planOf(motif),
    motif.runs,
    defined({
      title: motif.name,
      reader,
      colours: looks,
      plain: looks[motif.name],
      true: trueSizeOf(motif),
      done,
    }),
  );
}

const coloursOf = (motif: Motif) => runsOf(motif).map(({ colour }) => colour);

/** Its named colours of which nothing tells how they look. */
export const madeUpIn = (doc: MakerDoc, motif: Motif): string[] =>
  motif.runs.length === 0 ? [] : madeUpOf(doc, coloursOf(motif));
