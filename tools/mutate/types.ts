/** Which mutants the type check refuses: npm test would notice them without a test of ours. */
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import ts from 'typescript';
import type { Mutant } from './mutants.ts';

export class TypeCheck {
  readonly #texts = new Map<string, { text: string; version: number }>();
  readonly #service: ts.LanguageService;

  constructor() {
    const config = ts.readConfigFile('tsconfig.json', (path) => readFileSync(path, 'utf8'));
    const { options } = ts.parseJsonConfigFileContent(
      { ...config.config, include: [] },
      ts.sys,
      process.cwd(),
    );
    this.#service = ts.createLanguageService({
      getCompilationSettings: () => options,
      getScriptFileNames: () => [...this.#texts.keys()],
      getScriptVersion: (path) => String(this.#texts.get(path)?.version ?? 0),
      getScriptSnapshot: (path) => {
        const text = this.#texts.get(path)?.text ?? ts.sys.readFile(path);
        return text === undefined ? undefined : ts.ScriptSnapshot.fromString(text);
      },
      getCurrentDirectory: () => process.cwd(),
      getDefaultLibFileName: (its) => ts.getDefaultLibFilePath(its),
      fileExists: (path) => ts.sys.fileExists(path),
      readFile: (path) => ts.sys.readFile(path),
    });
  }

  /** Whether the file that the mutant stands in, whose text is `source`, is refused with it. */
  refuses({ file, from, to, replacement }: Mutant, source: string): boolean {
    return this.#errors(file, source.slice(0, from) + replacement + source.slice(to)) > 0;
  }

  #errors(file: string, text: string): number {
    const path = resolve(file);
    this.#texts.set(path, { text, version: (this.#texts.get(path)?.version ?? 0) + 1 });
    return (
      this.#service.getSyntacticDiagnostics(path).length + this.#service.getSemanticDiagnostics(path).length
    );
  }
}
