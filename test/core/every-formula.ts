/** Every formula that the core declares, found in its sources: none is left out of what the tests hold them to. */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Formula } from '../../src/core/base/working.ts';

const CORE = new URL('../../src/core/', import.meta.url);

const isFormula = (value: unknown): value is Formula =>
  typeof value === 'object' && value !== null && 'formula' in value && 'given' in value && 'source' in value;

/** By file and name, as `edges/border.ts GROWTH`. */
export async function everyFormula(): Promise<ReadonlyMap<string, Formula>> {
  const found = new Map<string, Formula>();
  const files = readdirSync(CORE, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'))
    .sort();
  for (const file of files) {
    const exported = (await import(fileURLToPath(new URL(file, CORE)))) as Record<string, unknown>;
    for (const [name, value] of Object.entries(exported))
      if (isFormula(value)) found.set(`${file} ${name}`, value);
  }
  return found;
}
