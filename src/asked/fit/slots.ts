/** The options of a question as a phrase can fill them. */
import type { Asked, Mark } from '../../chat/asked.ts';
import { isAttachment, metaOf, type OptionMeta } from '../../chat/options.ts';
import type { Route } from '../../chat/registry.ts';
import { COMMON } from '../marks.ts';
import { SENSES, type SenseName } from '../words.ts';

/** An option as a phrase can fill it. */
export interface Slot {
  readonly name: string;
  readonly takes: string;
  readonly mark: Mark;
  readonly nouns: readonly SenseName[];
  readonly near: readonly SenseName[];
  readonly not: readonly SenseName[];
  readonly meta: OptionMeta | undefined;
  readonly choices: readonly {
    readonly value: string;
    readonly senses: readonly SenseName[];
    readonly words: readonly string[];
  }[];
}

/** Names of senses, parted by spaces or bars. */
export const senseNames = (text = ''): SenseName[] =>
  text
    .split(/[ |]/)
    .filter((name) => name !== '')
    .map((name) => {
      if (!Object.hasOwn(SENSES, name)) throw new Error(`no sense is called ${name}`);
      return name as SenseName;
    });

const BY_KIND: Readonly<Record<string, string>> = {
  integer: 'count',
  number: 'count',
  length: 'length',
  weight: 'weight',
  gauge: 'gauge',
  ball: 'ball',
  stitch: 'stitch',
  stitches: 'stitches',
  choice: 'choice',
  yesno: 'choice',
  text: 'text',
};

function slotOf(name: string, mark: Mark, meta: OptionMeta | undefined): Slot {
  return {
    name,
    takes: mark.takes ?? BY_KIND[meta?.kind ?? 'text'] ?? 'text',
    mark,
    nouns: senseNames(mark.nouns),
    near: senseNames(mark.near),
    not: senseNames(mark.not),
    meta,
    choices: Object.entries(mark.choices ?? {}).map(([value, said]) => ({
      value,
      senses: said.split(' ').filter((one) => Object.hasOwn(SENSES, one)) as SenseName[],
      words: said
        .split(' ')
        .filter((one) => one !== '' && !Object.hasOwn(SENSES, one))
        .map((one) => one.replaceAll('_', ' ')),
    })),
  };
}

/** What marks an option of that name in every question. */
const common = (name: string): Mark | undefined => (Object.hasOwn(COMMON, name) ? COMMON[name] : undefined);

/** What marks an option of a question: what is common to its name, and what the question says of it. */
export function markOf({ question }: Route, name: string): Mark | undefined {
  if (!Object.hasOwn(question.options, name)) return undefined;
  return { ...common(name), ...question.asked?.marks?.[name] };
}

/** The slots of a question, extras behind its options. */
export function slotsOf({ question }: Route, asked: Asked): Slot[] {
  const own = Object.entries(question.options).map(([name, schema]) => {
    return slotOf(name, { ...common(name), ...asked.marks?.[name] }, metaOf(schema));
  });
  const extra = Object.entries(asked.extras ?? {}).map(([name, mark]) => slotOf(name, mark, undefined));
  return [...own, ...extra].filter(({ mark, meta }) => mark.never !== true && !isAttachment(meta?.kind));
}
