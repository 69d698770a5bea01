/** Every formula that the core declares, found in its sources: none is left out of what the tests hold them to. */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Formula } from '../../src/core/base/working.ts';

const CORE = new URL('../../src/core/', import.meta.url);

const isFormula = (value: unknown): value is Formula =>
  typeof value === 'object' && value !== null && 'formula' in value && 'given' in value && 'source' in value;

/** By name, as `GROWTH`; where several folders have one of that name, with the folder: `group SIDE_OFF`. */
export async function everyFormula(): Promise<ReadonlyMap<string, Formula>> {
  const found: { readonly folder: string; readonly name: string; readonly formula: Formula }[] = [];
  const files = readdirSync(CORE, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.d.ts'))
    .sort();
  for (const file of files) {
    const exported = (await import(fileURLToPath(new URL(file, CORE)))) as Record<string, unknown>;
    for (const [name, value] of Object.entries(exported))
      if (isFormula(value)) found.push({ folder: file.split('/')[0] ?? '', name, formula: value });
  }
  const shared = (name: string) => found.filter((one) => one.name === name).length > 1;
  return new Map(
    found.map(({ folder, name, formula }) => [shared(name) ? `${folder} ${name}` : name, formula]),
  );
}
