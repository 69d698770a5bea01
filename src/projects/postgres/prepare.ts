/** Prepares a database for the program, as its owner. */
import type { NotSaved } from '../not-saved.ts';
import { Connections } from './connections.ts';
import { Fault, notOpened } from './faults.ts';
import { allow, bringUpToDate, VERSION, type Allowed } from './schema.ts';

export interface Prepared {
  /** The version of the tables before and now; 0 where there were none. */
  readonly from: number;
  readonly to: number;
  /** Whether the role that prepared it may do everything. */
  readonly superuser: boolean;
  /** The role that was allowed to use it. */
  readonly allowed: (Allowed & { readonly role: string }) | undefined;
}

/** Rejects with NotSaved, and says why. */
export async function prepareDatabase(url: string, role?: string): Promise<Prepared> {
  let connections: Connections;
  try {
    connections = new Connections(url, () => undefined);
  } catch (error) {
    throw notOpened(new Fault(error));
  }
  try {
    return await connections.reads(async (ask) => {
      const from = await bringUpToDate(ask);
      const [self] = await ask('select rolsuper from pg_roles where rolname = current_user');
      const allowed = role === undefined ? undefined : { role, ...(await allow(ask, role)) };
      return { from, to: VERSION, superuser: self?.['rolsuper'] === 't', allowed };
    });
  } catch (error) {
    const { cause } = error as NotSaved;
    throw cause instanceof Fault && (error as NotSaved).code === 'not-read' ? notOpened(cause) : error;
  } finally {
    await connections.close();
  }
}
