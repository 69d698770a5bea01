/** What commands ask of the saved things. */
import { MAKER_VERSION, makerSchema, newMaker, type MakerDoc } from './schema.ts';
import type { Kind, Store } from './store.ts';

export const MAKERS: Kind<MakerDoc> = {
  folder: 'makers',
  version: MAKER_VERSION,
  schema: makerSchema,
  migrations: {},
};

export class Projects {
  constructor(readonly store: Store) {}

  /** A maker's document; a fresh one, not yet saved, where there is none. */
  async maker(id: string, name: string): Promise<MakerDoc> {
    return (await this.store.read(MAKERS, id)) ?? newMaker(id, name);
  }

  /** Whether anything is saved of her. */
  async knows(id: string): Promise<boolean> {
    return (await this.store.read(MAKERS, id)) !== undefined;
  }

  /**
   * Changes a maker's document: `change` works on a copy and returns what to tell; whatever it throws leaves everything
   * as it was. Resolves when it is on the disk.
   */
  async changeMaker<R>(id: string, name: string, change: (doc: MakerDoc) => R): Promise<R> {
    return this.store.change(MAKERS, id, (saved) => {
      const doc = saved ?? newMaker(id, name);
      const tell = change(doc);
      return { keep: doc, tell };
    });
  }

  /** Removes everything that is kept of a maker. */
  async eraseMaker(id: string): Promise<void> {
    await this.store.change(MAKERS, id, () => ({ keep: undefined, tell: undefined }));
  }
}
