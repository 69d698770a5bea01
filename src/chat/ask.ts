/** One way through: options checked, the question answered, the answer shown in the asker's own ways. */
import { Problem } from '../core/base/problem.ts';
import { clip } from '../core/base/quantity.ts';
import { inWays, num, type Ways } from '../core/base/reader.ts';
import { NotSaved } from '../projects/not-saved.ts';
import { show, type Answer, type Shown } from './answer.ts';
import type { Context } from './command.ts';
import { nearest } from '../core/base/nearest-name.ts';
import { inOwnWay, metaOf } from './options.ts';
import type { Found } from './registry.ts';

/** Options by name, as text, whatever room they come from. */
export type Typed = Readonly<Record<string, string>>;

export interface Checked {
  readonly options: Record<string, unknown>;
  /** What was assumed because an option was left out. */
  readonly assumed: readonly string[];
}

/** Reads a question's options. Throws a Problem about the first option at fault. */
export function checkOptions(
  { question, path }: Found,
  typed: Typed,
  context: Pick<Context, 'ways'>,
): Checked {
  const names = Object.keys(question.options);
  for (const name of Object.keys(typed)) {
    if (names.includes(name)) continue;
    const near = nearest(name, names);
    throw new Problem(`/${path} has no option ${clip(name)}.`, {
      option: name,
      hint:
        near === undefined
          ? names.length === 0
            ? 'It takes none.'
            : `It takes ${names.join(', ')}.`
          : `Did you mean ${near}?`,
    });
  }
  const options: Record<string, unknown> = {};
  const assumed: string[] = [];
  for (const [name, schema] of Object.entries(question.options)) {
    const meta = metaOf(schema);
    const text = typed[name];
    const result = schema.safeParse(text === undefined ? undefined : inOwnWay(meta.kind, text, context.ways));
    if (!result.success) {
      if (text === undefined) {
        throw new Problem(`The option ${name} is missing.`, {
          option: name,
          hint: `${meta.says}: ${name}:${meta.example}`,
        });
      }
      const issue = result.error.issues[0];
      const hint = issue?.code === 'custom' ? (issue.params?.['hint'] as string | undefined) : undefined;
      throw new Problem(issue?.message ?? 'That does not fit.', {
        option: name,
        hint: hint ?? `${name}:${meta.example}`,
      });
    }
    if (result.data !== undefined) options[name] = result.data;
    const took = text === undefined ? undefined : meta.took?.(text);
    if (took !== undefined) assumed.push(took);
    if (text === undefined && result.data !== undefined) {
      assumed.push(meta.assumed ?? `${name}: ${saidValue(result.data)}, as none was given.`);
    }
  }
  return { options, assumed };
}

const saidValue = (value: unknown) => (typeof value === 'number' ? num(value) : String(value));

/** A problem in the asker's own units and terms, like an answer. Faults of ours, and the disk's, pass as they are. */
function inOwnWords(error: unknown, ways: Ways): unknown {
  if (!(error instanceof Problem) || error instanceof NotSaved) return error;
  return new Problem(inWays(error.message, ways), { option: error.option, hint: inWays(error.hint, ways) });
}

/** Asks a question whose options are typed text; the answer, or what is wrong, is shown in the asker's own ways. */
export async function ask(found: Found, typed: Typed, context: Context): Promise<Shown> {
  try {
    const { options, assumed } = checkOptions(found, typed, context);
    const answer: Answer = await found.question.answer(options, context);
    if (!found.question.changes) return show(answer, context.ways, assumed);
    // What was changed may be the asker's ways themselves: she reads the answer in the new ones.
    const { settings } = await context.projects.maker(context.maker.id, context.maker.name);
    const { clock } = context.ways;
    return show(answer, { ...settings, ...(clock ? { clock } : {}) }, assumed);
  } catch (error) {
    throw inOwnWords(error, context.ways);
  }
}
