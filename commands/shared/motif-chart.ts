/** The chart of a saved motif, as every answer and sheet draws it. */
import { defined } from '../../src/core/base/defined.ts';
import type { Reader } from '../../src/core/base/reader.ts';
import { planOf, runsOf, type MotifSpec } from '../../src/core/yarn/motif.ts';
import { trueSizeOf } from '../../src/core/yarn/true-size.ts';
import { drawChart } from '../../src/pictures/chart.ts';
import type { Drawing } from '../../src/pictures/drawing.ts';
import { looksOf, madeUpOf } from '../../src/projects/looks.ts';
import type { MakerDoc, Motif } from '../../src/projects/schema.ts';

/** Drawn in these colours, true to its gauge where that is known; `done` are its finished rows. */
export const drawMotifChart = (
  motif: MotifSpec,
  looks: Readonly<Record<string, string>>,
  { reader, done }: { readonly reader: Reader; readonly done?: number | undefined },
): Drawing =>
  drawChart(
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

/** The looks of a motif's colours, in her own pictures. */
export const looksIn = (doc: MakerDoc, motif: Motif): Readonly<Record<string, string>> =>
  looksOf(doc, [...coloursOf(motif), motif.name], motif.looks);

/** The chart of a motif of hers. */
export const chartOf = (
  doc: MakerDoc,
  motif: Motif,
  view: { readonly reader: Reader; readonly done?: number | undefined },
): Drawing => drawMotifChart(motif, looksIn(doc, motif), view);

const coloursOf = (motif: Motif) => runsOf(motif).map(({ colour }) => colour);

/** Its named colours of which nothing tells how they look. */
export const madeUpIn = (doc: MakerDoc, motif: Motif): string[] =>
  motif.runs.length === 0 ? [] : madeUpOf(doc, coloursOf(motif));
