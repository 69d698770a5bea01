/** Every option of every question against everything that should not be typed there: an answer or a refusal, never a fault. */
import { describe, expect, it } from 'vitest';
import { registry } from '../commands/index.ts';
import { readLine, writeLine } from '../src/chat/line.ts';
import { isRequired, metaOf } from '../src/chat/options.ts';
import { asking, type Asking } from './asking.ts';

/** What no option takes as a number of anything, and what none should choke on. */
const HOSTILE = [
  '-1',
  '0',
  '-0',
  '1e308',
  '1e999',
  '9'.repeat(400),
  '0.0000001',
  '2.5',
  '1/0',
  'NaN',
  'Infinity',
  '-Infinity',
  '0x10',
  '12 bananas',
  '5 parsec',
  '-3cm',
  '0g',
  '1e308cm',
  '1e308m/1e-308g',
  '0x0',
  '13x',
  'x'.repeat(3000),
  '1 '.repeat(1500),
  '__proto__',
  'constructor',
  'toString',
  '../../etc/passwd',
  '\0',
  '\u001b[2J',
  '\u202eabc',
  '⟦120 cm⟧ ⟦hdc⟧',
  '@everyone <@123> [x](http://127.0.0.1)',
  'import("fs")',
  'f(x)=x; evaluate("1")',
  '${process.exit(1)}',
  "'; DROP TABLE motifs; --",
  '½',
  '１２',
  '👩‍🌾',
  'a\nb',
  '\ud800',
  ',',
  '()',
  '2, 2',
  '4 rows moss, 1e9 times',
];

/** Every answer is sound in its form: figures are numbers, a refusal says what is wrong and what would do. */
async function mustBeSound(room: Asking, line: string, typed = '') {
  const answer = await room.ask(line);
  expect(room.faults, line).toEqual([]);
  if (answer.ok) {
    expect(answer.headline.length, line).toBeGreaterThan(0);
    for (const [key, { value }] of Object.entries(answer.figures))
      expect(Number.isFinite(value), `${line} → ${key}`).toBe(true);
    for (const step of answer.working)
      expect(Number.isFinite(step.result), `${line} → ${step.label}`).toBe(true);
    // A name may be any word: what she wrote herself may come back.
    const said = `${answer.headline} ${answer.lines?.join(' ') ?? ''}`;
    expect(typed === '' ? said : said.replaceAll(typed, ''), line).not.toMatch(
      /NaN|Infinity|undefined|\[object/,
    );
  } else {
    expect(answer.problem.length, line).toBeGreaterThan(0);
    expect(answer.problem.length, line).toBeLessThan(400);
    expect(answer.hint.length, line).toBeGreaterThan(0);
  }
  return answer;
}

describe.each(registry.routes.map((found) => [found.path, found] as const))('/%s', (path, { question }) => {
  const example = readLine(`/${path} ${question.example}`).options;
  const words = path.split(' ');

  it('takes or refuses everything, in every option', async () => {
    const prepared = async () => {
      const room = asking();
      for (const line of question.before ?? []) await room.ask(line);
      return room;
    };
    let room = await prepared();
    for (const [name, schema] of Object.entries(question.options)) {
      const numeric = ['integer', 'number', 'length', 'weight'].includes(metaOf(schema).kind);
      for (const value of HOSTILE) {
        const line = writeLine({ words, options: { ...example, [name]: value } });
        const answer = await mustBeSound(room, line, value);
        // What is saved may have gone with an answer that changes something.
        if (answer.ok && question.changes) room = await prepared();
        if (numeric && /^(-1|NaN|1e999|Infinity|12 bananas|-3cm)$/.test(value)) {
          expect(answer, line).toMatchObject({ ok: false, option: name });
        }
      }
    }
  });

  it('refuses an unknown option, one given twice, one without a value, an unclosed quote and a line without end', async () => {
    const room = asking();
    for (const line of question.before ?? []) await room.ask(line);
    const typed = writeLine({ words, options: example });
    const [first] = Object.keys(example);
    const wrong = [
      `${typed} wibble:1`,
      `${typed} wibble:`,
      `${typed} wobble:"never closed`,
      `/${path} ${'x'.repeat(5000)}`,
      `/${path}x`,
      ...(first === undefined ? [] : [`${typed} ${first}:1`]),
    ];
    for (const line of wrong) expect((await mustBeSound(room, line)).ok, line).toBe(false);
    // And the next line is answered.
    expect(await room.ask(typed)).toMatchObject({ ok: true });
  });

  it('refuses each needed option when it is left out', async () => {
    for (const [name, option] of Object.entries(question.options)) {
      if (!isRequired(option) || !(name in example)) continue;
      const others = Object.fromEntries(Object.entries(example).filter(([other]) => other !== name));
      const room = asking();
      for (const line of question.before ?? []) await room.ask(line);
      expect(await mustBeSound(room, writeLine({ words, options: others }))).toMatchObject({
        ok: false,
        option: name,
      });
    }
  });
});

it('answers lines that are no question at all', async () => {
  const room = asking();
  for (const line of [
    '',
    '/',
    '/zzz',
    'x'.repeat(5000),
    '//',
    ':',
    'a:',
    '"',
    '“',
    '\\',
    '/ /',
    'rowan:',
    'rowan: ',
    ':/',
    '\0',
    '/\0',
    '\u2028',
    ...HOSTILE,
  ])
    expect(await mustBeSound(room, line), JSON.stringify(line)).toMatchObject({
      ok: false,
      option: expect.any(String) as string,
    });
  expect(await room.ask('rowan:')).toMatchObject({
    problem: 'There is no question after the name rowan.',
    option: 'question',
  });
  expect(await room.text('/')).not.toContain('(question)');
  expect(await room.ask('/settings change')).toMatchObject({ ok: false, option: 'units' });
});

it.each([
  ['size:99999999999999999999', 'size', 'too large'],
  ['size:1,200', 'size', 'unclear'],
  ['size:3 toString:1', 'tostring', 'has no option'],
])('says what is wrong with /stitches row %s', async (typed, option, problem) => {
  const answer = await asking().ask(`/stitches row shape:diagonal row:1 ${typed}`);
  expect(answer).toMatchObject({ ok: false, option });
  expect(answer.problem).toContain(problem);
});

it('reads bare numbers in a ball and behind a gauge in the maker’s own units, and either terms of a stitch', async () => {
  const room = asking();
  await room.ask('wren: /settings change units:imperial terms:UK');
  const comparing = (who: string, want: string) =>
    room.figure(`${who}: /gauge compare have:"13x10 over 4in" want:"${want}"`, 'width_percent');
  expect(await comparing('wren', '13x10 over 4')).toBeCloseTo(0, 9);
  expect(await comparing('rowan', '13x10 over 4')).toBe(await comparing('rowan', '13x10 over 4cm'));
  const rough = (who: string, ball: string) =>
    room.ask(`${who}: /yardage left left:5g ball:${ball} shape:diagonal size:12 each:12g done_row:6`);
  for (const [who, bare, full] of [
    ['rowan', '170/100', '170m/100g'],
    ['rowan', '170m/100', '170m/100g'],
    ['wren', '186/3.5', '186yd/3.5oz'],
  ] as const)
    expect((await rough(who, bare)).figures).toEqual((await rough(who, full)).figures);
  for (const who of ['wren', 'rowan'])
    for (const stitch of ['htr', 'hdc'])
      expect(await room.ask(`${who}: /stitches row shape:flat size:9 row:1 stitch:${stitch}`)).toMatchObject({
        ok: true,
      });
  expect((await room.ask('/stitches row shape:flat size:9 row:1 stitch:zz')).problem).toContain('“zz”');
});
