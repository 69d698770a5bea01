/** The backup that docs/running.md names, made by its own commands, and what is there after it was put back. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { FileStore } from '../src/projects/file-store.ts';
import { Projects } from '../src/projects/projects.ts';
import { groupPlan } from './core/group/plan.ts';

const at = new Date('2026-03-02T12:00:00Z');
const newFolder = () => mkdtempSync(join(tmpdir(), 'backup-'));
const page = readFileSync('docs/running.md', 'utf8');
/** Its lines that begin so, with those that go on from them. */
const command = (begins: string) => new RegExp(`^${begins}(?:.*\\\\\\n)*.*$`, 'm').exec(page)?.[0] ?? '';

it('holds nobody’s temporary files, and finds everybody whom a blanket names, however old its entry was', async () => {
  const [folder, archives, back] = [newFolder(), newFolder(), newFolder()];
  const store = await FileStore.open({ folder, stays: true });
  const projects = new Projects(store);
  const { id } = await projects.groups.open({}, groupPlan(), { by: 'ines', name: 'Ines', at, once: 'open' });
  const entry = join(folder, 'catalogue', `${id}.json`);
  const before = readFileSync(entry, 'utf8');
  await projects.groups.happen(id, { by: 'mara', at, once: 'joins' }, () => [
    { did: 'joined', maker: 'mara', name: 'Mara', perWeek: 2, colours: [] },
  ]);
  await projects.changeMaker('mara', 'Mara', (doc) => void (doc.settings.units = 'metric'));
  // As an archive has it that came to the entry first.
  writeFileSync(entry, before);
  mkdirSync(join(folder, 'writing', 'token'), { recursive: true });
  writeFileSync(join(folder, 'writing', 'token', 'half'), '{"ha');
  const sh = (script: string, DATA_DIR: string) =>
    execFileSync('sh', ['-c', script], { cwd: archives, env: { ...process.env, DATA_DIR } });
  sh(command('tar --create').replace('$(date +%F)', '2026-03-02'), folder);
  await store.close();
  const [archive = ''] = spawnSync('ls', [archives], { encoding: 'utf8' }).stdout.split('\n');
  const held = execFileSync('tar', ['-tzf', join(archives, archive)], { encoding: 'utf8' }).split('\n');
  expect(held).toContain(`./groups/${id}.events.jsonl`);
  expect(held.filter((path) => /writing|lock|catalogue/.test(path))).toEqual([]);
  sh(command('tar --extract'), back);

  const again = new Projects(await FileStore.open({ folder: back, stays: true }));
  expect(await again.keptOf('mara')).toMatchObject({ name: 'Mara' });
  expect(await again.groups.names('mara')).toBe(true);
  await again.eraseMaker('mara');
  expect(JSON.stringify(await again.groups.read(id))).not.toContain('mara');
  await again.store.close();
});
