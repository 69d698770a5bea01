import { describe, expect, it } from 'vitest';
import { MemoryStore } from '../../../src/projects/memory.ts';
import { NotSaved } from '../../../src/projects/not-saved.ts';
import { Projects } from '../../../src/projects/projects.ts';
import { inBrief } from '../../../src/rooms/terminal/render.ts';
import { terminalId } from '../../../src/rooms/terminal/room.ts';
import { SAFE_ID } from '../../../src/projects/store.ts';
import { asking } from '../../asking.ts';
import fc from 'fast-check';

class Broken extends MemoryStore {
  constructor(private readonly error: Error) {
    super();
  }
  override read(): Promise<undefined> {
    return Promise.reject(this.error);
  }
}

describe('the terminal room', () => {
  it('shows the id of a fault of ours, and nothing else of it', async () => {
    const error = new TypeError('secret is not a function');
    const room = asking(new Projects(new Broken(error)));
    const text = await room.text('/settings show');
    expect(room.faults).toEqual([error]);
    expect(text).toContain('noted as fault');
    expect(text).not.toMatch(/secret|TypeError|\bat \//);
  });

  it('says in one line what a colon leads up to, and nothing else', async () => {
    const { ask } = asking();
    const brief = async (line: string) => {
      const { headline, lines = [] } = await ask(line);
      return inBrief({ headline, lines });
    };
    expect(await brief('/stitches spread from:97 to:131 worked:flat')).toMatch(
      /^34 increases in this row take 97 stitches to 131: \[work 1, .* Then work 2\.$/,
    );
    expect(await brief('/stitches row shape:diagonal size:12 row:9')).toMatch(/312 stitches in all\.$/);
  });

  it('keeps the working back until somebody asks why, each her own last answer', async () => {
    const { text, ask } = asking();
    const first = await text('/stitches row shape:diagonal size:12 row:9');
    expect(first).toMatch(/^Row 9 has 19 stitches[\s\S]*type why\.$/);
    expect(first).not.toContain('2 × 9 + 1');
    expect(await text('rowan: /why')).toContain('Nothing was answered just now');
    for (const why of ['why', 'Why?', '/why']) expect(await text(why)).toContain('2 × 9 + 1 = 19');
    const line = '/stitches row shape:diagonal size:12 row:9 working:yes';
    expect(await text(line)).toMatch(/^Row 9 has 19 stitches[\s\S]*2 × 9 \+ 1 = 19/);
    // A program always has all of it.
    expect((await ask(line)).working.length).toBeGreaterThan(0);
    expect((await ask('why')).figures['stitches']?.value).toBe(19);
  });

  it('keeps back what is told in detail until somebody asks why, and tells a program at once', async () => {
    const { text, ask } = asking();
    const line = '/resize width:120cm height:160cm side:15cm';
    const first = await text(line);
    expect(first).toMatch(/ {2}3\. [\s\S]*More, and the working: type why\.$/);
    expect(first).not.toContain('4. ');
    expect(await text('why')).toMatch(/^In detail\n {2}4\. .*\n {2}5\. /);
    expect((await ask(line)).lines).toHaveLength(6);
  });

  it('says what the disk refused as a sentence, not as a fault', async () => {
    const room = asking(
      new Projects(new Broken(new NotSaved('not-saved', 'It is full. Nothing was changed.', 'Later.'))),
    );
    expect(await room.ask('/settings show')).toMatchObject({
      ok: false,
      problem: 'It is full. Nothing was changed.',
      hint: 'Later.',
    });
    expect(room.faults).toEqual([]);
  });

  it('gives every name an id of its own that is safe in a file name', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1, maxLength: 40 }), (name) => {
        expect(terminalId(name)).toMatch(SAFE_ID);
      }),
    );
    const names = [
      'rowan',
      'Rowán',
      '..',
      'a/b',
      '小林',
      'x',
      '🧶',
      'CON',
      'a'.repeat(40),
      '小'.repeat(39),
      `${'小'.repeat(38)}林`,
    ];
    expect(new Set(names.map(terminalId)).size).toBe(names.length);
  });
});
