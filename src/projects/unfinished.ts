/** Whether something is still to be moved into a store: what is not there yet must not be taken for what never was. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import * as z from 'zod';
import { lazily } from '../core/base/lazily.ts';
import { NotSaved } from './not-saved.ts';
import type { Kind, Store } from './store.ts';

const begunSchema = lazily(() => z.object({ version: z.literal(1), begun: z.iso.datetime() }));
type Begun = z.infer<ReturnType<typeof begunSchema>>;

const MOVES: Kind<Begun> = {
  folder: 'moves',
  called: 'That something is moved here',
  version: 1,
  get schema() {
    return begunSchema();
  },
  migrations: {},
  builtBeside: true,
  derived: true,
};
/** There is one document. */
const INTO = 'into';

/** Notes that what is moved into this store is not all there yet. */
export const noteBegun = (store: Store, now: Date) =>
  store.change<Begun, undefined>(MOVES, INTO, (doc) => ({
    keep: doc ?? { version: 1, begun: now.toISOString() },
    tell: undefined,
  }));

/** Notes that all is there, or that nothing more will come. */
export const noteEnded = (store: Store) => store.erase(MOVES, INTO);

/** Whether anything was ever moved into a data folder; all that can be said without reading a document. */
export const mayBeUnfinished = (folder: string): boolean => existsSync(join(folder, MOVES.folder));

/** A store in words, and as it is named to `npm run move`. */
export interface Named {
  readonly said: string;
  readonly named: string;
}

/** Throws NotSaved (`move-not-ended`) where a move into this store was broken off. */
export async function mustBeWhole(store: Store, { said, named }: Named): Promise<void> {
  const begun = await store.read(MOVES, INTO);
  if (begun === undefined) return;
  throw new NotSaved(
    'move-not-ended',
    `A move into ${said} was begun on ${begun.begun.slice(0, 10)} and has not ended: not everything may be there. Nothing was changed.`,
    `Ask for the move again, and it goes on; npm run move -- --to ${named} --as-it-is takes what is there for all of it.`,
  );
}
