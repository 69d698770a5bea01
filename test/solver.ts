/** An exact mixed-integer solver (HiGHS), the judge of what is called best. */
import loader from 'highs';

interface Solution {
  readonly Status: string;
  readonly ObjectiveValue: number;
  readonly Columns: Readonly<Record<string, { readonly Primal?: number }>>;
}

// The package is a CommonJS function whose types promise a module with a default.
const load = loader as unknown as () => Promise<{ solve(program: string): Solution }>;

/** Solves a program in CPLEX LP text; columns are rounded to whole numbers where they are meant to be. */
export const solver = await load();
