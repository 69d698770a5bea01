/**
 * The examples in the docstrings of the core are run: each line `call // → value` is evaluated with what its own file
 * exports, so that no example says what the code does not do.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';

const CORE = fileURLToPath(new URL('../../src/core/', import.meta.url));

interface Example {
  readonly call: string;
  readonly gives: string;
  readonly line: number;
}

/** The examples of a source: the lines after `@example` in a docstring, without their stars. */
function examplesIn(source: string): Example[] {
  const lines = source.split('\n');
  const examples: Example[] = [];
  let within = false;
  lines.forEach((text, index) => {
    if (/^\s*\* @example\s*$/.test(text)) within = true;
    else if (/\*\//.test(text)) within = false;
    else if (within) {
      const [, call, gives] = /^\s*\* (.+?) \/\/ → (.+)$/.exec(text) ?? [];
      if (call === undefined || gives === undefined)
        throw new Error(`line ${index + 1} is no example: ${text}`);
      examples.push({ call, gives, line: index + 1 });
    }
  });
  return examples;
}

const files = readdirSync(CORE, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'))
  .map((file) => ({ file, examples: examplesIn(readFileSync(join(CORE, file), 'utf8')) }))
  .filter(({ examples }) => examples.length > 0);

/** Evaluates our own text from a docstring with the exports of its file. */
function evaluate(text: string, exported: Readonly<Record<string, unknown>>): unknown {
  // eslint-disable-next-line @typescript-eslint/no-implied-eval, @typescript-eslint/no-unsafe-call
  return new Function(...Object.keys(exported), `return (${text});`)(...Object.values(exported));
}

describe('examples in docstrings', () => {
  it('are there', () => {
    expect(files.length).toBeGreaterThan(10);
  });

  it.each(files.flatMap(({ file, examples }) => examples.map((one) => ({ file, ...one }))))(
    '$file:$line $call',
    async ({ file, call, gives }) => {
      const exported = (await import(pathToFileURL(join(CORE, file)).href)) as Record<string, unknown>;
      const value = evaluate(call, exported);
      if (typeof value === 'number') expect(value).toBeCloseTo(evaluate(gives, exported) as number, 9);
      else expect(value).toEqual(evaluate(gives, exported));
    },
  );
});
