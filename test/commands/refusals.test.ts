/** What is refused before anything is reckoned, by its code; the facts stand in the sentence too. */
import { describe, expect, it } from 'vitest';
import { registry } from '../../commands/index.ts';
import { checkOptions } from '../../src/chat/ask.ts';
import { LONGEST_LINE, readLine } from '../../src/chat/line.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { asking } from '../asking.ts';

const MOTIFS = [
  '/motif define name:furrow shape:diagonal size:12 gauge:13x10 colours:"12 rows moss, 12 rows sand"',
  '/motif define name:trellis shape:diagonal size:12 gauge:13x10',
];
const BLANKET = [...MOTIFS, '/blanket start name:rows kinds:furrow columns:3 rows:4'];
const GROUP = [...BLANKET, '/together open'];

describe('a line', () => {
  it.each([
    ['/stitches row ' + 'x'.repeat(LONGEST_LINE), 'line-too-long', 'question'],
    ['/stitches row size:1 size:2', 'option-given-twice', 'size'],
    ['/stitches row shape:"diagonal', 'quote-not-closed', 'shape'],
    ['/stitches row shape:"flat" extra', 'belongs-to-no-option', 'question'],
    ['/stitches row size:', 'option-without-value', 'size'],
    ['/stitches rwo', 'no-such-question', 'question'],
    ['/', 'no-such-question', 'question'],
    ['/stitches row shpae:flat', 'no-such-option', 'shpae'],
    ['/stitches row shape:flat', 'option-missing', 'size'],
    ['/stitches row shape:flat size:few', 'not-a-whole-number', 'size'],
    ['/stitches row shape:flat size:0', 'too-small', 'size'],
    ['/stitches row shape:flat size:12345678901234567890', 'too-large', 'size'],
    ['/stitches row shape:flat size:-12345678901234567890', 'too-small', 'size'],
    ['/yardage weighed motif:18g ball:170m/100g reserve:much', 'not-a-number', 'reserve'],
    ['/yardage weighed motif:18g ball:170m/100g reserve:101', 'too-large', 'reserve'],
    ['/stitches row shape:heap size:12', 'not-a-choice', 'shape'],
    ['/lookup term term:"⟦⟧"', 'empty-text', 'term'],
    [`/lookup term term:${'x'.repeat(41)}`, 'text-too-long', 'term'],
  ])('%s', async (line, code, option) => {
    expect(await asking().ask(line)).toMatchObject({ ok: false, code, option });
  });

  it('that is out of range says the range', () => {
    const problem = (line: string) => {
      try {
        const { words, options } = readLine(line);
        checkOptions(registry.find(words), options, { reader: { units: 'metric', terms: 'US' } });
      } catch (error) {
        if (error instanceof Problem) return error.facts;
      }
      return undefined;
    };
    expect(problem('/host remind maker:rowan do:ask name:' + 'x'.repeat(61))).toEqual({
      most: 60,
      given: 61,
    });
    expect(problem('/blanket swap a:0 b:2')).toMatchObject({ min: 1, given: 0 });
    expect(problem('/yardage weighed motif:18g ball:170m/100g reserve:101')).toEqual({
      min: 0,
      max: 100,
      given: 101,
    });
    expect(problem('/stitches row ' + 'x'.repeat(LONGEST_LINE))).toEqual({
      most: LONGEST_LINE,
      given: LONGEST_LINE + '/stitches row '.length,
    });
  });
});

describe('a question', () => {
  it.each([
    ['motif define name:x shape:flat size:12', 'rows-missing', 'other_size', []],
    ['motif weigh name:furrow', 'measure-missing', 'weight', MOTIFS],
    // By its gauge 15.4 cm.
    ['motif weigh name:furrow side:30cm', 'side-unlike-gauge', 'side', MOTIFS],
    ['motif weigh name:furrow side:2in', 'side-unlike-gauge', 'side', MOTIFS],
    ['progress back motif:furrow', 'no-row-done', 'motif', MOTIFS],
    ['progress at motif:furrow row:25', 'no-such-row', 'row', MOTIFS],
    ['progress counted motif:furrow counts:"3 5"', 'too-many-counts', 'counts', MOTIFS],
    ['progress next motif:furrow', 'last-row-done', 'motif', [...MOTIFS, '/progress at motif:furrow row:24']],
    ['progress show motif:furrow left:40g', 'which-colour', 'colour', MOTIFS],
    ['progress show motif:furrow left:40g colour:plum', 'no-such-colour', 'colour', MOTIFS],
    ['progress show motif:furrow left:40g colour:moss', 'motif-not-weighed', 'left', MOTIFS],
    ['blanket start name:x kinds:"furrow, furrow" columns:3 rows:4', 'kind-twice', 'kinds', MOTIFS],
    ['blanket start name:x kinds:furrow', 'size-missing', 'columns', MOTIFS],
    ['blanket start name:x kinds:furrow width:1m', 'size-missing', 'height', MOTIFS],
    ['blanket start name:x kinds:furrow columns:3 width:1m', 'size-given-twice', 'width', MOTIFS],
    ['blanket start name:x kinds:furrow columns:3 rows:4 map:AA/AA', 'size-given-twice', 'columns', MOTIFS],
    ['blanket start name:x kinds:furrow columns:3 rows:4 border_colours:moss', 'no-border', 'border', MOTIFS],
    ['blanket kinds drop:trellis', 'no-such-kind', 'drop', BLANKET],
    ['blanket kinds drop:furrow', 'no-kinds', 'drop', BLANKET],
    ['blanket kinds add:furrow', 'kind-twice', 'add', BLANKET],
    ['blanket colours hex:#123456', 'which-colour', 'colour', BLANKET],
    ['blanket colours colour:moss hex:green', 'not-a-colour', 'hex', BLANKET],
    ['blanket colours colour:plum price:2', 'no-such-colour', 'colour', BLANKET],
    ['blanket change', 'no-change', null, BLANKET],
    ['blanket change no_border:yes border:sc', 'border-given-and-taken', 'no_border', BLANKET],
    ['blanket change border_colours:moss', 'no-border', 'border_colours', BLANKET],
    ['settings change', 'no-change', 'units', []],
    ['lookup term term:zigzagstitchery', 'in-no-table', 'term', []],
    ['help about:zeppelins', 'no-such-question', 'about', []],
    ['together board', 'no-group-yet', null, []],
    ['together board name:none', 'group-name-unknown', 'name', GROUP],
    ['together mine', 'which-group', 'name', [...GROUP, '/together open name:other']],
    ['host reopen closes:2001-01-01', 'day-passed', 'closes', GROUP],
    ['host invite maker:"a:b"', 'which-maker', 'maker', GROUP],
    ['together handover maker:nobody', 'no-such-maker', 'maker', GROUP],
    ['together handover answer:yes', 'not-offered', 'answer', GROUP],
    ['host bar maker:nobody', 'no-such-maker', 'maker', GROUP],
    ['host remind maker:rowan', 'holds-no-pledge', 'maker', [...GROUP, 'rowan: /together join per_week:2']],
  ])('/%s', async (line, code, option, before) => {
    const room = asking();
    for (const earlier of before) expect(await room.ask(earlier)).toMatchObject({ ok: true });
    expect(await room.ask(`/${line}`)).toMatchObject({ ok: false, code, option });
    expect(room.faults).toEqual([]);
  });
});
