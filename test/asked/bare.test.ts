/** Words behind a question’s own that name no option; options by other names; sizes by their names. */
import { describe, expect, it } from 'vitest';
import { registry } from '../../commands/index.ts';
import { placeBareWords } from '../../src/asked/bare.ts';
import { inOwnNames } from '../../src/chat/option-names.ts';
import { readLine } from '../../src/chat/line.ts';
import { asking } from '../asking.ts';

const placed = (line: string) => {
  const { words, options } = readLine(line);
  const begun = registry.begun(words);
  return begun && placeBareWords(begun.route, begun.rest, options);
};

describe('words that name no option', () => {
  it.each([
    ['/stitches row diagonal 12 row 9', { shape: 'diagonal', size: '12', row: '9' }],
    ['/stitches spread 40 48', { from: '40', to: '48' }],
    ['/stitches spread 40 to 48 round', { from: '40', to: '48', worked: 'round' }],
    ['/stitches repeat 8 plus 10 near 106', { multiple: '8', plus: '10', near: '106' }],
    ['/yardage swap 9 170m/100g 125m/50g', { balls: '9', ball: '170m/100g', new_ball: '125m/50g' }],
    ['/gauge shape 13x10 12', { gauge: '13x10', size: '12' }],
    ['/resize 120x160cm 15cm squares', { width: '120cm', height: '160cm', side: '15cm' }],
    ['/joining 8 11 15cm whip', { columns: '8', rows: '11', side: '15cm', method: 'whip' }],
    ['/motif list please', {}],
    ['/settings change inches', { units: 'imperial' }],
    ['/stitches row diagonal size:12', { shape: 'diagonal', size: '12' }],
  ])('%s', (line, options) => {
    expect(placed(line)).toEqual(options);
  });

  // A number that could be one thing or another is none.
  it.each([
    '/stitches row diagonal 12 9',
    '/resize 120cm 160cm 15cm',
    '/border rounds 100 140 sc sc',
    '/stitches row banana',
    '/stitches spread 40 48 56',
  ])('%s has words that could be several things', (line) => {
    expect(placed(line)).toBeUndefined();
  });

  it('are answered, and said how they were read', async () => {
    const { ask } = asking();
    expect(await ask('/stitches spread 40 48')).toMatchObject({
      ok: true,
      read_as: '/stitches spread from:40 to:48',
      figures: { changes: { value: 8 } },
    });
    expect(await ask('/stitches row banana')).toMatchObject({ ok: false, code: 'words-without-option' });
  });
});

describe('options by other names', () => {
  const own = (path: string, typed: Record<string, string>) =>
    inOwnNames(typed, registry.get(path)?.question.options ?? {});

  it.each([
    ['resize', { wide: '50in', tall: '60in' }, { width: '50in', height: '60in' }],
    ['motif define', { colors: '4 rows moss' }, { colours: '4 rows moss' }],
    ['blanket colours', { color: 'moss' }, { colour: 'moss' }],
    ['joining', { across: '8', down: '11' }, { columns: '8', rows: '11' }],
    // Its own option is never another one’s name.
    ['border rounds', { across: '100', down: '140' }, { across: '100', down: '140' }],
    ['resize', { width: '50in', wide: '60in' }, { width: '50in', wide: '60in' }],
    // A size by its name, where a measure is asked for.
    ['resize', { size: 'throw' }, { for: 'throw' }],
    ['yardage swatch', { width: 'queen bed' }, { for: 'queen bed' }],
    ['resize', { width: 'banana' }, { width: 'banana' }],
    ['resize', { width: '120cm', size: '12' }, { width: '120cm', size: '12' }],
  ])('/%s %o', (path, typed, options) => {
    expect(own(path, typed)).toEqual(options);
  });

  it('are read behind the sign = as well, and without a slash before a command’s name', async () => {
    const { ask } = asking();
    const said = await ask('/resize width:50in height:60in side:5in');
    for (const line of [
      '/resize width=50in height=60in side=5in',
      'resize wide:50in tall:60in side:5in',
      'dot: resize width:50in height:60in side:5in',
    ])
      expect(await ask(line)).toMatchObject({ ok: true, headline: said['headline'] });
  });
});
