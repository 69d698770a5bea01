/** The question that DEVELOPERS.md shows, taken out of the page: it compiles, and is swept like any other. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { registry } from '../commands/index.ts';
import { command, type Question } from '../src/chat/command.ts';
import { Registry } from '../src/chat/registry.ts';
import { asking } from './asking.ts';
import { pageFiles } from './developers-page.ts';
import { expectAnswered, expectRefused, expectShowable } from './swept.ts';

const root = join(import.meta.dirname, '..');
const files = pageFiles();

/** What the compiler says of these files, as if they lay in the project. */
function complaints(texts: ReadonlyMap<string, string>): string[] {
  const { config } = ts.readConfigFile(join(root, 'tsconfig.json'), (path) => ts.sys.readFile(path)) as {
    config: { compilerOptions: object };
  };
  const { options } = ts.convertCompilerOptionsFromJson(config.compilerOptions, root);
  const host = ts.createCompilerHost(options);
  const there = host.fileExists.bind(host);
  const onDisk = host.readFile.bind(host);
  host.fileExists = (path) => texts.has(path) || there(path);
  host.readFile = (path) => texts.get(path) ?? onDisk(path);
  const getSourceFile = host.getSourceFile.bind(host);
  host.getSourceFile = (path, ...rest) => {
    const text = texts.get(path);
    return text === undefined
      ? getSourceFile(path, ...rest)
      : ts.createSourceFile(path, text, ts.ScriptTarget.ES2022, true);
  };
  const program = ts.createProgram([...texts.keys()], options, host);
  return [...texts.keys()].flatMap((path) => {
    const source = program.getSourceFile(path);
    return [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)].map(
      ({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n'),
    );
  });
}

describe('the question on the developers’ page', () => {
  const path = [...files.keys()].find((file) => file.startsWith(join(root, 'commands')))!;

  it('is all there, and nowhere else', () => {
    expect(files.size).toBe(2);
    for (const file of files.keys()) expect(existsSync(file), file).toBe(false);
  });

  it('compiles as it stands, and not with an option that is not there', { timeout: 120_000 }, () => {
    const text = files.get(path)!.replace("'blanket kinds', { name:", "'blanket kinds', { named:");
    const said = complaints(new Map([...files, [`${path}.wrong.ts`, text]]));
    expect(said).toHaveLength(1);
    expect(said[0]).toContain("'named' does not exist in type");
  });

  it('is shown, answered and refused like every other, in a registry with all of them', async () => {
    const { weave } = (await import(path)) as { weave: Question };
    const questions = [...registry.commands.find(({ name }) => name === 'yardage')!.questions, weave];
    const all = new Registry([
      ...registry.commands.filter(({ name }) => name !== 'yardage'),
      command({ name: 'yardage', says: 'Yarn', questions }),
    ]);
    const route = all.get('yardage weave')!;
    expectShowable(route);
    await expectAnswered(route, all);
    await expectRefused(route, all);
    const room = asking(undefined, all);
    // 124 ends of 2 minutes are 248 minutes.
    expect((await room.ask('/yardage weave ends:124')).figures['hours']?.value).toBeCloseTo(248 / 60, 12);
    expect(await room.text('/yardage weave ends:500 blanket:"garden throw"')).toContain(
      'Fewer of them?: /blanket kinds name:"garden throw"',
    );
  });
});
