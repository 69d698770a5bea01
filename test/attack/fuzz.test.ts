/** What nobody should type, typed: answered or refused in words, never a fault, and nobody else waits for it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { cutBlanks } from '../../src/core/base/blanks.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { LARGEST_EXPORT, readExport, writeExport } from '../../src/projects/export.ts';
import { newMaker } from '../../src/projects/schema.ts';
import { asking } from '../asking.ts';
import { chances, fuzz } from './fuzz.ts';
import { longestHold, slowness } from './largest.ts';

describe('hostile lines', () => {
  it('are answered or refused in words, and soon', async () => {
    const report = await fuzz(2_000, 7, 50);
    expect(report.faults).toEqual([]);
    expect(report.unsound).toEqual([]);
    // Some of them are good questions, or nothing would have been tried.
    expect(report.answered).toBeGreaterThan(300);
    expect(report.refused).toBeGreaterThan(300);
    // What is compiled on its way takes longer the first time.
    expect(report.longest.ms).toBeLessThan(400 * slowness());
  }, 60_000);
});

describe('what hostile lines found', () => {
  it('a change of a blanket that goes by another name since is left alone', async () => {
    const { ask, faults } = asking();
    for (const line of [
      '/motif define name:moss shape:diagonal size:6 gauge:13x10',
      '/blanket start name:first kinds:moss columns:2 rows:2',
      '/blanket change name:first new_name:second',
      '/blanket change name:second new_name:third',
    ])
      expect(await ask(line), line).toMatchObject({ ok: true });
    // What it was goes with it through its names; another blanket of an old name has nothing of it.
    expect(await ask('/blanket undo name:first')).toMatchObject({ ok: true, data: { blanket: 'first' } });
    expect(await ask('/blanket undo name:third')).toMatchObject({ ok: false, code: 'nothing-to-undo' });
    expect(faults).toEqual([]);
  });
});

/** Every regular expression that stands in the sources, as it stands. What is typed reaches them with its long runs of blanks cut. */
function expressions(): { readonly at: string; readonly regex: RegExp }[] {
  const root = new URL('../../', import.meta.url).pathname;
  const found: { at: string; regex: RegExp }[] = [];
  for (const folder of ['src', 'commands'])
    for (const file of readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })) {
      if (!file.endsWith('.ts')) continue;
      const text = readFileSync(join(root, folder, file), 'utf8');
      // A slash where a value may begin, to the next that is neither escaped nor in a class.
      for (const match of text.matchAll(
        /(?<=[(,=:[!&|?{};\n]\s*|return )\/((?:[^\\/[\n*]|\\.|\[(?:[^\]\\\n]|\\.)*\])(?:[^\\/[\n]|\\.|\[(?:[^\]\\\n]|\\.)*\])*)\/([dgimsuvy]*)(?=[.,;)\s\]}])/g,
      )) {
        try {
          found.push({
            at: `${folder}/${file}: ${match[0]}`,
            regex: new RegExp(match[1] ?? '', match[2] ?? ''),
          });
        } catch {
          // Something between two slashes that is no expression.
        }
      }
    }
  return found;
}

describe('regular expressions', () => {
  const all = expressions();
  const LONGEST = 4_000;
  const pumped = [
    'a',
    ' ',
    '1',
    '"',
    '-',
    '.',
    ',',
    '(',
    '[',
    '<',
    '\\',
    '⟦',
    '\n',
    'a ',
    '1 ',
    '1,',
    'ab',
    'a-',
    '1.',
    '1/',
    '1x',
    "a'",
    '((',
    '1 row ',
    'a:',
    'sc ',
    '\t ',
    '⟦a',
    '12in ',
    '1 1/',
  ].flatMap((piece) => {
    const text = piece.repeat(Math.ceil(LONGEST / piece.length)).slice(0, LONGEST - 1);
    return [`${text}!`, `${text}\u0000`, `!${text}`, text].map(cutBlanks);
  });

  it('take no longer on hostile texts than on others', () => {
    expect(all.length).toBeGreaterThan(150);
    const slow: string[] = [];
    const most = 20 * slowness();
    for (const { at, regex } of all)
      for (const text of pumped) {
        const began = performance.now();
        regex.lastIndex = 0;
        text.replace(regex, '');
        if (performance.now() - began < most) continue;
        // Once more: something else may have had the machine.
        const again = performance.now();
        regex.lastIndex = 0;
        text.replace(regex, '');
        if (performance.now() - again > most) {
          slow.push(`${at} on ${JSON.stringify(text.slice(0, 12))}`);
          break;
        }
      }
    expect(slow).toEqual([]);
  }, 60_000);
});

describe('hostile imports', () => {
  const read = (text: string) => {
    try {
      return readExport(text, 'me', 'Me');
    } catch (error) {
      if (!(error instanceof Problem)) throw error;
      return error;
    }
  };
  const HOSTILE: readonly unknown[] = [
    null,
    true,
    -1,
    0,
    0.5,
    1e308,
    -1e308,
    401,
    1e9,
    '',
    'x'.repeat(5_000),
    '__proto__',
    '⟦120 cm⟧',
    '2026-13-99T99:99:99Z',
    [],
    [[]],
    {},
    { constructor: 1 },
    [null],
    Array(3_000).fill(0),
  ];

  /** The places of a document, each with how to put something else there. */
  function places(
    doc: unknown,
    put: (value: unknown) => void,
    at = '',
  ): { at: string; put: (value: unknown) => void }[] {
    const here = [{ at, put }];
    if (typeof doc !== 'object' || doc === null) return here;
    return here.concat(
      Object.entries(doc).flatMap(([key, value]) =>
        places(value, (other) => ((doc as Record<string, unknown>)[key] = other), `${at}.${key}`),
      ),
    );
  }

  it('are refused by the place, or read whole: every field of every kind of value', async () => {
    const room = asking();
    for (const line of [
      '/motif define name:moss shape:diagonal size:6 gauge:13x10 hook:5mm colours:"4 rows moss, 8 rows sand" replace:yes',
      '/motif weigh name:moss weight:18g side:7.8cm ball:170m/100g',
      '/blanket start name:throw kinds:moss columns:2 rows:2 border:"sc hdc" border_colours:"sand"',
      '/blanket colours name:throw colour:moss ball:170m/100g price:4.5 balls:3',
      '/progress next motif:moss',
      '/lesson start lesson:growing',
      '/motif define name:gone shape:flat size:9 other_size:9 replace:yes',
      '/motif remove name:gone confirm:yes',
    ])
      expect(await room.ask(`rowan: ${line}`), line).toMatchObject({ ok: true });
    const saved = JSON.parse(writeExport(await room.projects.maker('rowan', 'rowan'))) as Record<
      string,
      unknown
    >;
    const fresh = () => structuredClone(saved);
    expect(read(JSON.stringify(saved))).not.toBeInstanceOf(Problem);
    const count = places(saved, () => undefined).length;
    expect(count).toBeGreaterThan(80);
    let refused = 0;
    for (let n = 1; n < count; n += 1)
      for (const value of HOSTILE) {
        const doc = fresh();
        const place = places(doc, () => undefined)[n];
        place?.put(value);
        const came = read(JSON.stringify(doc));
        if (came instanceof Problem) {
          refused += 1;
          expect(came.message, place?.at).not.toMatch(/undefined|\[object|⟦/);
        } else {
          // What is taken can be written, and read back as the same.
          expect(read(writeExport(came)), place?.at).toEqual(came);
        }
      }
    expect(refused).toBeGreaterThan(count * 8);
  }, 60_000);

  it('of any depth, length or key are refused in words, and soon', async () => {
    const empty = writeExport(newMaker('me', 'Me'));
    const open = empty.trimEnd().slice(0, -1);
    const texts = [
      '['.repeat(100_000),
      `${'['.repeat(5_000)}${']'.repeat(5_000)}`,
      `{"format":"loopwright-maker","version":1,"motifs":${'['.repeat(3_000)}${']'.repeat(3_000)}}`,
      `${open},"motifs":[${'1,'.repeat(LARGEST_EXPORT / 2 - 1_000)}1]}`,
      `${open},"motifs":[${'{},'.repeat(LARGEST_EXPORT / 3 - 1_000)}{}]}`,
      `${open},"${'k'.repeat(LARGEST_EXPORT - 2_000)}":1}`,
      `${open},${'"a":1,'.repeat(10_000)}"a":2}`,
      `${open},"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}}}`,
      `${open},"version":1e9}`,
      `${open},"version":-1}`,
      '"'.repeat(1_000),
      ' '.repeat(LARGEST_EXPORT),
      'null',
      '',
    ];
    const most = 50 * slowness();
    const slow: [string, number][] = [];
    for (const text of texts) {
      const ms = await longestHold(() => Promise.resolve(read(text)));
      if (ms > most) slow.push([text.slice(0, 60), Math.round(ms)]);
    }
    expect(slow).toEqual([]);
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined();
  }, 60_000);

  it('cut or turned anywhere are refused or read, never half', () => {
    const chance = chances(3);
    const whole = writeExport({ ...newMaker('me', 'Me'), current: { motif: 'moss' } });
    for (let n = 0; n < 400; n += 1) {
      const at = Math.floor(chance() * whole.length);
      const text =
        chance() < 0.5
          ? whole.slice(0, at)
          : `${whole.slice(0, at)}${String.fromCharCode(Math.floor(chance() * 127))}${whole.slice(at + 1)}`;
      const came = read(text);
      if (!(came instanceof Problem)) expect(read(writeExport(came))).toEqual(came);
    }
  });
});
