/**
 * Runs inside vitest's worker, in place of its own runner. Each test file runs once as it is, noting for every test what it
 * reaches; then, with the file still loaded, every mutant is made active in turn and the tests that reach it run again, the
 * quickest first, until one fails. Mutants that act while a module is loaded get a fresh load each.
 */
import { setMaxListeners } from 'node:events';
import { appendFileSync, readFileSync } from 'node:fs';
import { collectTests } from '@vitest/runner';
import {
  TestRunner,
  vi,
  type RunnerTask,
  type RunnerTestCase,
  type RunnerTestFile,
  type RunnerTestSuite,
} from 'vitest';
import { makeWatch, type Watch } from './watch.ts';

/** What the session hands in, as JSON in the file that MUTATE_PLAN names. */
export interface Plan {
  /** Mutants still to be judged; `place` is what is noted as reached, `formula` the changed text of a formula or a unit. */
  readonly mutants: readonly {
    readonly id: string;
    readonly file: string;
    readonly place: string;
    readonly formula?: string | undefined;
  }[];
  /** The sources that a test file imports, itself or through others. */
  readonly reach: Readonly<Record<string, readonly string[]>>;
  /** Where the verdicts go, one JSON a line. */
  readonly log: string;
}

/** One line of the log. */
export type Note =
  /** This mutant is being tried; if nothing follows in `within` ms, it never ends. */
  | { readonly kind: 'trying'; readonly id: string; readonly test: string; readonly within: number }
  | { readonly kind: 'killed'; readonly id: string; readonly test: string }
  /** A test file is done: the mutants that its tests reached. */
  | { readonly kind: 'judged'; readonly file: string; readonly reached: readonly string[] }
  /** A test that cannot be run twice judges nothing. */
  | { readonly kind: 'unfit'; readonly test: string };

/** A test is given up after this many times its usual time, and a second. */
const TIMES_USUAL = 15;
const AND_MS = 1000;
const LOADING_MS = 20_000;

/** Kept between test files, each of which makes a runner of its own. */
interface Memory {
  readonly watch: Watch;
  readonly plan: Plan;
  readonly killed: Set<string>;
  /** What is reached while modules are loaded. */
  readonly atLoad: Set<string>;
}

// Every run of a test listens for its being broken off; a test that runs a thousand times is no leak.
setMaxListeners(0);

const shared = globalThis as { __loopwrightMutants?: Watch; __loopwrightMemory?: Memory };

function remembered(): Memory {
  if (shared.__loopwrightMemory) return shared.__loopwrightMemory;
  const plan = JSON.parse(readFileSync(process.env['MUTATE_PLAN']!, 'utf8')) as Plan;
  const texts = plan.mutants.flatMap(({ id, formula }) =>
    formula === undefined ? [] : [[id, formula] as const],
  );
  const watch = (shared.__loopwrightMutants = makeWatch(new Map(texts)));
  return (shared.__loopwrightMemory = { watch, plan, killed: new Set(), atLoad: new Set() });
}

const testsIn = (task: RunnerTask): RunnerTestCase[] =>
  task.type === 'test' ? [task] : task.tasks.flatMap(testsIn);

/** What the suites around a test do before and after each of theirs, done around `run`. */
async function withHooks(test: RunnerTestCase, run: () => unknown): Promise<void> {
  const suites: RunnerTestSuite[] = [];
  for (let suite = test.suite ?? test.file; ; suite = suite.suite ?? test.file) {
    suites.unshift(suite);
    if (suite === test.file) break;
  }
  for (const suite of suites)
    for (const hook of TestRunner.getSuiteHooks(suite).beforeEach) await hook(test.context, suite);
  try {
    await run();
  } finally {
    for (const suite of suites.toReversed())
      for (const hook of TestRunner.getSuiteHooks(suite).afterEach.toReversed())
        await hook(test.context, suite);
  }
}

export default class Judge extends TestRunner {
  readonly #memory = remembered();
  readonly #reachedBy = new Map<string, Set<string>>();
  readonly #usual = new Map<string, number>();
  /** Whether a test passes a second time: one that does not leans on what came before it and can judge nothing. */
  readonly #fit = new Map<string, boolean>();
  #began = 0;
  /** The tests of the file at hand as they were last loaded, by their id; none while a mutant is loaded with them. */
  #loaded: ReadonlyMap<string, RunnerTestCase> | undefined;

  override async importFile(path: string, source: 'collect' | 'setup'): Promise<void> {
    const { watch, atLoad } = this.#memory;
    watch.reached = watch.active === undefined ? atLoad : undefined;
    await super.importFile(path, source);
  }

  override onBeforeTryTask(test: RunnerTask): void {
    super.onBeforeTryTask(test);
    const reached = (this.#memory.watch.reached = new Set<string>());
    this.#reachedBy.set(test.id, reached);
    this.#began = performance.now();
  }

  override onAfterTryTask(test: RunnerTestCase): void {
    super.onAfterTryTask(test);
    this.#memory.watch.reached = undefined;
    this.#usual.set(test.id, performance.now() - this.#began);
  }

  override async onAfterRunSuite(suite: RunnerTask): Promise<void> {
    if ('filepath' in suite) await this.#judge(suite);
    await super.onAfterRunSuite(suite as never);
  }

  async #judge(file: RunnerTestFile): Promise<void> {
    const { plan, killed, atLoad } = this.#memory;
    const passed = testsIn(file).filter(({ result }) => result?.state === 'pass');
    this.#loaded = new Map(passed.map((test) => [test.id, test]));
    const sources = plan.reach[file.filepath] ?? [];
    const open = plan.mutants.filter(({ id, file: source }) => !killed.has(id) && sources.includes(source));
    const tests = [...this.#loaded.keys()].sort(
      (a, b) => (this.#usual.get(a) ?? 0) - (this.#usual.get(b) ?? 0),
    );
    const reached: string[] = [];
    // Those that act at loading come last: they spoil what is loaded.
    const loading = ({ place }: { place: string }) => atLoad.has(place);
    for (const mutant of [...open.filter((one) => !loading(one)), ...open.filter(loading)]) {
      const { id, place } = mutant;
      const those = loading(mutant) ? tests : tests.filter((test) => this.#reachedBy.get(test)?.has(place));
      if (those.length === 0) continue;
      reached.push(id);
      const test = loading(mutant)
        ? await this.#loadedWith(id, file, those)
        : await this.#among(id, file, those);
      if (test === undefined) continue;
      killed.add(id);
      this.#note({ kind: 'killed', id, test: `${file.name} > ${test}` });
    }
    vi.resetModules();
    this.#note({ kind: 'judged', file: file.name, reached });
  }

  async #isFit(id: string, file: RunnerTestFile): Promise<boolean> {
    const known = this.#fit.get(id);
    if (known !== undefined) return known;
    const test = await this.#fresh(id, file);
    const began = performance.now();
    const fit = await this.#passes(test);
    this.#usual.set(id, Math.min(this.#usual.get(id) ?? Infinity, performance.now() - began));
    this.#fit.set(id, fit);
    if (!fit) this.#note({ kind: 'unfit', test: `${file.name} > ${test.name}` });
    return fit;
  }

  /** Runs a test once more, with nothing active or with this mutant. */
  async #passes(test: RunnerTestCase, id?: string): Promise<boolean> {
    const { watch } = this.#memory;
    const within = TIMES_USUAL * (this.#usual.get(test.id) ?? 0) + AND_MS;
    if (id !== undefined) this.#note({ kind: 'trying', id, test: test.name, within });
    watch.active = id;
    watch.deadline = performance.now() + within;
    try {
      await withHooks(test, () => TestRunner.getTestFn(test)());
      return id === undefined || performance.now() <= watch.deadline;
    } catch {
      return false;
    } finally {
      watch.active = undefined;
    }
  }

  /** The first of these tests that fails with a mutant made active after loading. */
  async #among(id: string, file: RunnerTestFile, tests: readonly string[]): Promise<string | undefined> {
    for (const of of tests) {
      if (!(await this.#isFit(of, file))) continue;
      const test = await this.#fresh(of, file);
      if (await this.#passes(test, id)) continue;
      // A mutant may have spoilt what the tests share: then this failure proves nothing, and they are loaded anew.
      if (await this.#passes(test)) return test.name;
      this.#loaded = undefined;
      const again = await this.#fresh(of, file);
      const failed = !(await this.#passes(again, id));
      this.#loaded = undefined;
      if (failed) return test.name;
    }
    return undefined;
  }

  async #fresh(id: string, file: RunnerTestFile): Promise<RunnerTestCase> {
    const test = (this.#loaded ??= await this.#load(file)).get(id);
    if (!test) throw new Error(`${file.name} has lost a test on loading it again`);
    return test;
  }

  async #load(file: RunnerTestFile, active?: string): Promise<ReadonlyMap<string, RunnerTestCase>> {
    const { watch } = this.#memory;
    vi.resetModules();
    watch.active = active;
    watch.deadline = performance.now() + LOADING_MS;
    try {
      const [loaded] = await collectTests([file.filepath], this);
      if (!loaded || loaded.result?.state === 'fail') throw new Error(`${file.name} cannot be loaded`);
      return new Map(testsIn(loaded).map((test) => [test.id, test]));
    } finally {
      watch.active = undefined;
    }
  }

  /** The first of these tests that fails when the file is loaded with the mutant active. */
  async #loadedWith(id: string, file: RunnerTestFile, tests: readonly string[]): Promise<string | undefined> {
    for (let from = 0; from < tests.length;) {
      this.#loaded = undefined;
      this.#note({ kind: 'trying', id, test: 'loading', within: LOADING_MS });
      let loaded: ReadonlyMap<string, RunnerTestCase>;
      try {
        loaded = await this.#load(file, id);
      } catch {
        return 'loading';
      }
      const failed = await this.#firstFailing(id, tests.slice(from), loaded);
      if (failed === undefined) return undefined;
      if (await this.#isFit(failed, file)) return loaded.get(failed)?.name ?? 'loading';
      from = tests.indexOf(failed) + 1;
    }
    return undefined;
  }

  async #firstFailing(
    id: string,
    tests: readonly string[],
    loaded: ReadonlyMap<string, RunnerTestCase>,
  ): Promise<string | undefined> {
    for (const of of tests) {
      if (this.#fit.get(of) === false) continue;
      const test = loaded.get(of);
      if (!test || !(await this.#passes(test, id))) return of;
    }
    return undefined;
  }

  #note(note: Note): void {
    appendFileSync(this.#memory.plan.log, `${JSON.stringify(note)}\n`);
  }
}
