import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { MemoryStore } from '../../../src/projects/memory.ts';
import { Projects } from '../../../src/projects/projects.ts';
import { writeFiles } from '../../../src/rooms/terminal/files.ts';
import { folderOf, KeptFiles } from '../../../src/rooms/terminal/kept-files.ts';
import { asking } from '../../asking.ts';

const nothing = () => Promise.resolve(new Uint8Array());
const noPng = { toPng: nothing, toPdf: nothing };
const file = (name: string) => ({ name, content: 'x' });

describe('files that answers wrote', () => {
  it('go with everything else that is kept of her, and nothing besides', async () => {
    const files = mkdtempSync(join(tmpdir(), 'files-'));
    writeFileSync(join(files, 'holiday.txt'), 'mine');
    await writeFiles(files, [file('throw.svg'), file('loopwright-export.json')], noPng);
    await writeFiles(files, [file('throw.svg')], noPng);
    await writeFiles(folderOf(files, 'rowan'), [file('throw.svg')], noPng);
    const projects = new Projects(new MemoryStore());
    projects.keepElsewhere(new KeptFiles(files));
    const { ask, faults } = asking(projects);

    const first = await ask('/settings erase');
    expect(first.lines?.join('\n')).toContain(`2 files in the folder ${files}`);
    const done = await ask('/settings erase confirm:yes');
    expect(faults).toEqual([]);
    expect(done).toMatchObject({ ok: true, data: { erased: true, left: [] } });
    expect(done.lines?.join('\n')).toContain(`2 files in the folder ${files}`);
    expect(readdirSync(files).sort()).toEqual(['holiday.txt', 'rowan']);

    await ask('rowan: /settings erase confirm:yes');
    expect(existsSync(join(files, 'rowan'))).toBe(false);
    expect((await ask('/settings erase')).headline).toBe('Nothing is kept about you.');
  });

  it('are never written over: what differs lies beside, what is the same is there already', async () => {
    const files = mkdtempSync(join(tmpdir(), 'files-'));
    writeFileSync(join(files, 'throw.txt'), 'mine');
    const write = async (content: string) =>
      (await writeFiles(files, [{ name: 'throw.txt', content }], noPng)).map((path) => basename(path));
    expect(await write('first')).toEqual(['throw-2.txt']);
    expect(await write('second')).toEqual(['throw-3.txt']);
    expect(await write('first')).toEqual(['throw-2.txt']);
    expect(readFileSync(join(files, 'throw.txt'), 'utf8')).toBe('mine');
    // What was hers before stays hers when everything of the program goes.
    expect(await new KeptFiles(files).forget('me')).toMatchObject({ left: [] });
    expect(readdirSync(files)).toEqual(['throw.txt']);
  });

  it('are no others, whatever the list of them says', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'files-'));
    const files = join(folder, 'files');
    await writeFiles(files, [file('throw.png')], noPng);
    writeFileSync(join(folder, 'outside'), 'mine');
    const list = readdirSync(files).find((name) => name.startsWith('.')) ?? '';
    writeFileSync(join(files, list), '../outside\n..\n.\nthrow.png\n\n/etc/hostname\n');
    expect(await new KeptFiles(files).forget('me')).toEqual({
      removed: [`1 file in the folder ${files}`],
      left: [],
    });
    expect(existsSync(join(folder, 'outside'))).toBe(true);
  });
});
