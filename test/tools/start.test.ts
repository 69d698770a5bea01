/** The bundle starts from what was compiled of it beforehand, and without that, or with what is none, all the same. */
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';

const ROW = '/stitches row shape:diagonal size:12 row:9';
const ANSWER = 'Row 9 has 19 stitches of hdc; 99 stitches so far, 312 stitches in all.';

/** A bundle of its own, and the file of what was compiled. */
function bundle() {
  const folder = mkdtempSync(join(tmpdir(), 'bundle-'));
  cpSync('dist', folder, { recursive: true });
  const code = join(folder, `program.${process.versions.v8}-${process.arch}.code`);
  // Bundled by another Node, it is compiled by this one as it is where it is bundled.
  if (!existsSync(code)) spawnSync(process.execPath, ['tools/code.cjs', folder]);
  return { folder, code };
}

function asked(folder: string, options: readonly string[] = [], question = ROW) {
  const data = mkdtempSync(join(tmpdir(), 'bundle-data-'));
  const { stdout, stderr, status } = spawnSync(
    process.execPath,
    [...options, join(folder, 'main.js'), 'ask', question],
    { cwd: data, env: { PATH: process.env['PATH'], DATA_DIR: data, FILES_DIR: data }, encoding: 'utf8' },
  );
  return { line: stdout.split('\n')[0], stderr, status };
}
const answered = { line: ANSWER, stderr: '', status: 0 };

describe('a bundle', () => {
  beforeAll(() => {
    // Makes it, where there is none or a source is younger.
    spawnSync(process.execPath, ['tools/run.cjs', 'ask', ROW], {
      env: { ...process.env, DATA_DIR: tmpdir() },
    });
  });

  it('holds what was compiled of it by this Node', () => {
    const { folder, code } = bundle();
    expect(statSync(code).size).toBeGreaterThan(100_000);
    expect(asked(folder)).toEqual(answered);
  });

  it.each([
    ['nothing compiled', (code: string) => rmSync(code)],
    [
      'what was compiled cut off',
      (code: string) => writeFileSync(code, readFileSync(code).subarray(0, 5_000)),
    ],
    ['nothing in that file', (code: string) => writeFileSync(code, '')],
    ['something else in that file', (code: string) => writeFileSync(code, 'x'.repeat(20_000))],
    [
      'what was compiled of another program',
      (code: string) => {
        const program = join(code, '..', 'program.cjs');
        const text = readFileSync(program, 'latin1');
        writeFileSync(program, `${text}// Another one.\n`, 'latin1');
      },
    ],
    ['a file that nobody may read', (code: string) => chmodSync(code, 0)],
  ])('answers with %s', (_, spoil) => {
    const { folder, code } = bundle();
    spoil(code);
    expect(asked(folder)).toEqual(answered);
  });

  it('answers where Node was started in another way', () => {
    expect(asked(bundle().folder, ['--no-opt'])).toEqual(answered);
  });

  it('answers plain words, read by files of their own, from what was compiled of these and without', () => {
    const { folder } = bundle();
    const ofOwn = readdirSync(folder).filter((file) => /^(?!program\.).*\.code$/.test(file));
    expect(ofOwn.length).toBeGreaterThan(0);
    const words = 'how many stitches in row 9 of a 12 row diagonal square';
    const before = asked(folder, [], words);
    expect(before).toEqual(answered);
    for (const file of ofOwn) rmSync(join(folder, file));
    expect(asked(folder, [], words)).toEqual(before);
  });

  it('loads a part anew of which the loading failed half way', () => {
    const folder = mkdtempSync(join(tmpdir(), 'bundle-'));
    cpSync('tools/start.cjs', join(folder, 'main.js'));
    writeFileSync(
      join(folder, 'program.cjs'),
      `({
        './main.js': function (exports, require) {
          try { require('./part.js'); } catch (error) { console.log(error.message); }
          console.log(require('./part.js').whole);
        },
        './part.js': function (exports) {
          if (!process.tries) { process.tries = 1; throw new Error('no room just now'); }
          exports.whole = 'there';
        },
      })`,
    );
    expect(spawnSync(process.execPath, [join(folder, 'main.js')], { encoding: 'utf8' }).stdout).toBe(
      'no room just now\nthere\n',
    );
  });

  it('writes nothing beside itself', () => {
    const { folder } = bundle();
    const before = readdirSync(folder);
    asked(folder);
    expect(readdirSync(folder)).toEqual(before);
  });
});
