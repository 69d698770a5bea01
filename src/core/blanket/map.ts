/** The map of a blanket as it is typed and read: which kind lies where, and how many of each. */
import { Problem } from '../base/problem.ts';
import { clip } from '../base/quantity.ts';
import { count } from '../base/reader.ts';
import { readByKind } from './by-kind.ts';
import { checkSize, cutIntoRows, letter, type Cell } from './layout.ts';

export interface BlanketMap {
  readonly columns: number;
  readonly rows: number;
  readonly layout: readonly Cell[];
}

const MAP = 'map';
const MAP_HINT = 'Write letters row by row with / between, like ABBA/BAAB; a digit 0 to 3 turns: A0B1/B2A3.';

/** The number of the kind of a letter: 0 for A. */
const kindOf = (name: string) => name.toUpperCase().charCodeAt(0) - 'A'.charCodeAt(0);

/**
 * A map of one's own: letters for kinds, each with its quarter turns if it is turned (`A0B1/B2A3`), rows parted by `/`.
 *
 * Throws Problem: map-empty, map-unreadable, map-uneven, no-such-kind, blanket-too-large, each naming the row at fault.
 *
 * @example
 * readMap('AB/BA', 2).layout.map(({ kind }) => kind) // → [0, 1, 1, 0]
 */
export function readMap(text: string, kinds: number): BlanketMap {
  const lines = text
    .toUpperCase()
    .split(/[/\n]/)
    .map((line) => line.replace(/[\s,]/g, ''));
  if (lines.at(-1) === '') lines.pop();
  const layout: Cell[] = [];
  let columns = 0;
  lines.forEach((line, index) => {
    const row = index + 1;
    const cells = readMapRow(line, row, kinds);
    if (index > 0 && cells.length !== columns) {
      throw new Problem(
        'map-uneven',
        `Row ${row} of the map has ${count(cells.length, 'place')}, the first row ${columns}.`,
        {
          option: MAP,
          hint: 'Give every row the same number of places.',
          facts: { row, needed: columns, given: cells.length },
        },
      );
    }
    columns = cells.length;
    layout.push(...cells);
  });
  if (layout.length === 0)
    throw new Problem('map-empty', 'The map is empty.', { option: MAP, hint: MAP_HINT });
  checkSize(columns, lines.length);
  return { columns, rows: lines.length, layout };
}

/** One row of a map. Throws Problem: map-unreadable, no-such-kind. */
function readMapRow(line: string, row: number, kinds: number): Cell[] {
  if (!/^(?:[A-Z][0-3]?)+$/.test(line)) {
    throw new Problem(
      'map-unreadable',
      line === ''
        ? `Row ${row} of the map is empty.`
        : `Row ${row} of the map, “${clip(line)}”, cannot be read.`,
      { option: MAP, hint: MAP_HINT, facts: { row } },
    );
  }
  return [...line.matchAll(/([A-Z])([0-3]?)/g)].map(([, name = '', turn = '']) => {
    const kind = kindOf(name);
    if (kind >= kinds) {
      throw new Problem('no-such-kind', `Row ${row} of the map names kind ${name}, and there is none.`, {
        option: MAP,
        hint:
          kinds === 1
            ? 'This blanket has one kind, A. Add kinds first.'
            : `Use A to ${letter(kinds - 1)}, or add kinds first.`,
        facts: { row, kind: name, kinds },
      });
    }
    return { kind, turn: turn === '' ? 0 : Number(turn) };
  });
}

/** The layout as a map that `readMap` reads back, one line a row. */
export function writeMap(layout: readonly Cell[], columns: number): string[] {
  const turned = layout.some(({ turn }) => turn !== 0);
  const lines: string[] = [];
  for (let start = 0; start < layout.length; start += columns)
    lines.push(
      layout
        .slice(start, start + columns)
        .map(({ kind, turn }) => `${letter(kind)}${turned ? turn : ''}`)
        .join(turned ? ' ' : ''),
    );
  return lines;
}

/**
 * Every place with its number, the letter of its kind and its quarter turns, one line a row.
 *
 * @example
 * writePlaces([{ kind: 0, turn: 0 }, { kind: 1, turn: 1 }], 1) // → ['Row 1: 1 A', 'Row 2: 2 B1']
 */
export const writePlaces = (layout: readonly Cell[], columns: number): string[] =>
  cutIntoRows(
    layout.map(({ kind, turn }, place) => `${place + 1} ${letter(kind)}${turn === 0 ? '' : turn}`),
    columns,
  ).map((row, index) => `Row ${index + 1}: ${row.join(', ')}`);

/** The numbers of the places of each kind, from 1. */
export const placesByKind = (layout: readonly Cell[], kinds: number): number[][] =>
  Array.from({ length: kinds }, (_, kind) =>
    layout.flatMap((cell, place) => (cell.kind === kind ? [place + 1] : [])),
  );

/**
 * Counts by kind as they are typed: `A 12, B 8`, or names of kinds instead of letters. Kinds left out get none.
 *
 * Throws Problem: count-unreadable, no-such-kind, kind-twice.
 *
 * @example
 * readCountsByKind('A 12, sand square 8', ['moss square', 'sand square']) // → [12, 8]
 */
export function readCountsByKind(text: string, names: readonly string[]): number[] {
  const option = 'counts';
  const hint = `Write each kind with its number, like ${names.length > 1 ? 'A 12, B 8' : 'A 20'}.`;
  return readByKind(text, names, { option, hint }).map((number) => number ?? 0);
}
