/** Brings the text of a document up to date, step by step, and checks it. */
import * as z from 'zod';
import type { Kind } from './store.ts';

export type Read =
  | { readonly is: 'good'; readonly doc: unknown }
  /** Written by a program that knows more than this one. */
  | { readonly is: 'newer'; readonly version: number }
  | { readonly is: 'bad'; readonly why: string };

/**
 * Throws when an older document does not pass after its migrations: that is a fault of the migration, and the document
 * must not be taken for a bad one.
 */
export function upToDate(kind: Kind<unknown>, text: string): Read {
  let doc: unknown;
  try {
    doc = JSON.parse(text);
  } catch {
    return { is: 'bad', why: 'it is not JSON' };
  }
  return broughtUpToDate(kind, doc);
}

/** The same of what a text says. */
export function broughtUpToDate(kind: Kind<unknown>, read: unknown): Read {
  let doc = read as Record<string, unknown>;
  const version: unknown = (doc as Record<string, unknown> | null)?.['version'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return { is: 'bad', why: 'it names no version' };
  if (version > kind.version) return { is: 'newer', version };
  for (let from = version; from < kind.version; from++) {
    const migrate = kind.migrations[from];
    if (!migrate) throw new Error(`${kind.folder}: no way from version ${from} to ${from + 1}`);
    doc = { ...migrate(doc), version: from + 1 };
  }
  const result = kind.schema.safeParse(doc);
  if (result.success) return { is: 'good', doc: result.data };
  // Where it is wrong, without what it says.
  const why = result.error.issues.slice(0, 3).map((issue) => `${issue.path.join('.')}: ${issue.code}`);
  if (version < kind.version) throw new Error(`${kind.folder}: migrated wrongly (${why.join('; ')})`);
  return { is: 'bad', why: why.join('; ') };
}

/** The same for a file that a person hands in: says in words what is wrong with it. */
export function wrongPlace(error: z.ZodError): string {
  const [issue] = error.issues;
  const place = issue?.path.map((part) => (typeof part === 'number' ? `[${part + 1}]` : `.${String(part)}`));
  return `${place?.join('').replace(/^\./, '') ?? ''}: ${issue?.message ?? ''}`;
}
