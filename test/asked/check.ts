/** Holds readings to what was meant. */
import { registry } from '../../commands/index.ts';
import { readLine } from '../../src/chat/line.ts';
import { checkOptions } from '../../src/chat/ask.ts';
import { daysIn } from '../../src/asked/days.ts';
import { aroundOf } from '../../src/asked/known.ts';
import { understand, type Around, type Understood } from '../../src/asked/read.ts';
import { lookUpHook } from '../../src/core/lookup/hook.ts';
import { lookUpSize } from '../../src/core/lookup/size.ts';
import { lookUpTerm } from '../../src/core/lookup/term.ts';
import { lookUpYarn } from '../../src/core/lookup/yarn.ts';
import { asking, NOON, type Asking } from '../asking.ts';
import type { Meant } from './corpus.ts';

/** What the one who has saved something has saved. */
const SAVED_LINES = [
  '/motif define name:"sand square" shape:diagonal size:12 colours:"12 rows sand, 12 rows clay" gauge:13x10 hook:5mm',
  '/motif define name:"moss square" shape:diagonal size:12 colours:"4 rows moss, 2 rows sand, three times, then 6 rows moss" gauge:13x10 hook:5mm',
  '/blanket start name:"garden throw" kinds:"moss square, sand square" columns:4 rows:5 border:"sc hdc"',
  '/motif define name:furrow shape:diagonal size:12 colours:"12 rows moss, 12 rows sand" gauge:13x10',
  '/motif define name:trellis shape:diagonal size:12 colours:"12 rows moss, 12 rows plum" gauge:13x10',
  '/blanket start name:"Bean rows" kinds:"furrow, trellis" columns:3 rows:4',
  '/together open blanket:"Bean rows" name:"Bean row throw" spares:1',
  '/motif weigh name:"sand square" weight:11g',
  '/motif choose name:"moss square"',
  '/blanket choose name:"garden throw"',
  '/along open blanket:"garden throw" name:"Friday class" starts:2026-03-09 every:week',
  '/along join',
];

export async function savedAsking(): Promise<Asking> {
  const made = asking();
  for (const line of SAVED_LINES) {
    const said = await made.ask(line);
    if (!said.ok) throw new Error(`${line}: ${said.problem}`);
  }
  return made;
}

export const around = ({ projects }: Asking): Promise<Around> =>
  aroundOf({ projects, maker: { id: 'me', name: 'me' }, place: { manager: false } });

const READER = { units: 'metric', terms: 'US' } as const;

const TABLES = new Map<string, (text: string) => readonly unknown[]>([
  ['lookup term term', lookUpTerm],
  ['lookup hook hook', lookUpHook],
  ['lookup yarn yarn', (text) => lookUpYarn(text).yarns],
  ['lookup size size', lookUpSize],
]);

/** What a line says, read: two lines that say the same are the same. */
function meaning(path: string, options: Readonly<Record<string, string>>): string {
  const route = registry.get(path);
  if (!route) return `no question ${path}`;
  const parts = Object.entries(options)
    .map(([name, text]): [string, unknown] => {
      // A table is looked up by any of its names.
      const found = TABLES.get(`${path} ${name}`)?.(text);
      if (found !== undefined && found.length > 0) return [name, found];
      try {
        const schema = route.question.options[name];
        const only = { ...route, question: { ...route.question, options: schema ? { [name]: schema } : {} } };
        return [name, checkOptions(only, { [name]: text }, { reader: READER }).options[name]];
      } catch {
        return [name, text.toLowerCase()];
      }
    })
    .sort(([a], [b]) => a.localeCompare(b));
  return `${path} ${JSON.stringify(parts, (_, value: unknown) => (typeof value === 'number' ? Number(value.toPrecision(6)) : typeof value === 'string' ? value.toLowerCase() : value))}`;
}

export type Outcome = 'right' | 'asked back' | 'wrong';

const lineOf = ({
  route,
  options,
}: {
  route: { path: string };
  options: Readonly<Record<string, string>>;
}) => ({ path: route.path, options });

/** How a phrase came out beside what was meant. */
export function judge(meant: Meant, { verdict }: Understood): Outcome {
  if (meant.kind === 'nothing')
    return verdict.kind === 'answer' ? 'wrong' : verdict.kind === 'missing' ? 'asked back' : 'right';
  if (verdict.kind === 'unclear') return 'asked back';
  const wanted = meant.line.split(' || ').map((line) => {
    const { words, options } = readLine(line);
    return meaning(words.join(' '), options);
  });
  const { path, options } = lineOf(verdict.reading);
  const found = meaning(path, options);
  if (meant.kind === 'missing') {
    if (verdict.kind === 'answer') return 'wrong';
    return verdict.option === meant.option && wanted.includes(found) ? 'right' : 'asked back';
  }
  if (verdict.kind === 'missing') return 'asked back';
  return wanted.includes(found) ? 'right' : 'wrong';
}

export const read = async (phrase: string, surrounding: Around) =>
  understand(phrase, registry, { ...surrounding, days: await daysIn(phrase, NOON) });
