import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { realDisk } from '../../src/projects/disk.ts';

it.each([
  ['nothing', ''],
  ['one line', '{"a":1}\n'],
  ['one line without its end', '{"a":1}'],
  ['several', '{"a":1}\n{"b":"ü"}\n'],
  ['a line that just fills what is read at first', `${'x'.repeat(16_383)}\n`],
  ['one byte more', `${'x'.repeat(16_384)}\n`],
  ['letters that lie across the border', `${'ü'.repeat(30_000)}\n`],
  ['much', 'line\n'.repeat(300_000)],
])('reads %s whole', async (_, text) => {
  const path = join(mkdtempSync(join(tmpdir(), 'disk-')), 'a');
  writeFileSync(path, text);
  expect(await realDisk.readText(path)).toBe(text);
});

it('says what the system says of what cannot be read', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'disk-'));
  await expect(realDisk.readText(join(folder, 'none'))).rejects.toMatchObject({ code: 'ENOENT' });
  await expect(realDisk.readText(folder)).rejects.toMatchObject({ code: 'EISDIR' });
});
