/** What can be asked, and how? */
import type { Answer, Choose } from '../../src/chat/answer.ts';
import { command, question, type Command } from '../../src/chat/command.ts';
import { findBest, suggest } from '../../src/core/base/nearest-name.ts';
import { readLine } from '../../src/chat/line.ts';
import { opt } from '../../src/chat/options.ts';
import { exampleLine, optionWords } from '../../src/chat/reference.ts';
import { Registry, type Route } from '../../src/chat/registry.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { TOPICS, topicsOf } from './topics.ts';
import { clip } from '../../src/core/base/quantity.ts';
import { count } from '../../src/core/base/reader.ts';

/** More questions than these fit no screen. */
const MOST_FOUND = 8;

/** Questions that a word leads to: by topic, else by the words that they say of themselves. */
function byWords(registry: Registry, asked: string): Route[] {
  const words = asked.split(/[^a-z0-9]+/).filter((word) => word.length > 1);
  const topics = topicsOf(words);
  const routes = topics.flatMap(({ paths }) => paths.flatMap((path) => registry.get(path) ?? []));
  if (routes.length > 0) return [...new Set(routes)].slice(0, MOST_FOUND);
  const says = ({ path, question, command }: Route) =>
    ` ${path} ${question.says} ${command.says} ${Object.keys(question.options).join(' ')} `
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, ' ');
  const hits = (route: Route) =>
    words.filter((word) => says(route).includes(` ${word.replace(/s$/, '')}`)).length;
  return findBest(registry.routes, hits).slice(0, MOST_FOUND);
}

const pathsOf = (routes: readonly Route[]) => ({ questions: routes.map(({ path }) => path) });

/** What the next word may be. */
const leadingOn = (says: string, choices: Choose['choices']): Choose => ({
  question: 'help',
  option: 'about',
  says,
  choices,
});

const questionsOf = (routes: readonly Route[]): Choose['choices'] =>
  routes.map(({ path, question }) => ({ value: path, label: `/${path}: ${question.says}` }));

/** Refuses what no topic and no question has, with the nearest that there is. */
const noSuchQuestion = (typed: string, asked: string, { routes, commands }: Registry): Problem =>
  new Problem('no-such-question', `There is no question about ${clip(typed)}.`, {
    option: 'about',
    hint: suggest(
      asked,
      [
        ...routes.map(({ path }) => path),
        ...commands.map(({ name }) => name),
        ...TOPICS.map(({ word }) => word),
      ],
      () => 'Ask /help for what there is.',
    ),
  });

/** How one question is asked, option by option. */
function aboutQuestion(route: Route): Answer {
  const { path, question } = route;
  const example = exampleLine(route);
  // What changes something, or rests on what is saved, is not asked by a press.
  const harmless = question.changes !== true && !question.before;
  return {
    headline: `/${path}: ${question.says}.`,
    lines: [
      example,
      ...optionWords(route).map(
        ({ name, says, required, example: value, choices }) =>
          `    ${name}${required ? ' (needed)' : ''}: ${says}. ${choices.length > 0 ? `One of ${choices.join(', ')}; for` : 'For'} example ${name}:${value}`,
      ),
    ],
    data: pathsOf([route]),
    actions: harmless ? [{ label: 'Ask that', question: path, options: readLine(example).options }] : [],
  };
}

/** The questions of a command, each with a line that asks it. */
const aboutCommand = (asked: string, routes: readonly Route[]): Answer => ({
  headline: `/${asked} answers ${count(routes.length, 'question')}.`,
  lines: routes.flatMap((route) => [exampleLine(route), `    ${route.question.says}`]),
  data: pathsOf(routes),
  choose: leadingOn('How is it asked?', questionsOf(routes)),
});

/** The help page of these commands, itself a question like any other. */
export function help(commands: readonly Command[]) {
  const registry = new Registry(commands);
  const paths = registry.routes.map(({ path }) => path);
  return command({
    name: 'help',
    says: 'What can be asked here, and how',
    questions: [
      question({
        bare: 'about',
        private: true,
        says: 'Says what can be asked about a thing, or how one question is asked',
        options: {
          about: opt
            .text(
              {
                says: 'A word for what you want to know, like yarn, or a question, like stitches row',
                suggest: (typed) =>
                  paths
                    .filter((path) => path.includes(typed.toLowerCase().replace('/', '')))
                    .map((value) => ({ value })),
              },
              { example: 'border' },
            )
            .optional(),
        },
        example: 'about:"stitches row"',
        refused: { line: 'about:zeppelins', option: 'about' },
        asked: {
          ways: ['help'],
          also: 'yours which new done',
          not: 'gauge border motif blanket row stitch count evenly weigh hook yarn ball group',
          marks: { about: { never: true } },
          phrases: ['help', 'what can you do'],
        },
        answer({ about }): Answer {
          const asked = (about ?? '?').toLowerCase().replace(/^\//, '').replace(/\s+/g, ' ').trim();
          if (/^\?*$/.test(asked) || asked === 'help') {
            return {
              headline: 'What is it about? /help and one of these words leads on.',
              lines: TOPICS.map(({ word, says }) => `${word}: ${says}`),
              data: { topics: TOPICS.map(({ word }) => word), questions: paths },
              choose: leadingOn(
                'What is it about?',
                TOPICS.map(({ word, says }) => ({ value: word, label: `${word}: ${says}` })),
              ),
            };
          }
          const named = registry.routes.filter(({ path }) => path === asked || path.startsWith(`${asked} `));
          const found = named.length > 0 ? named : byWords(registry, asked);
          const [only, another] = found;
          if (only === undefined) throw noSuchQuestion(about ?? '', asked, registry);
          if (another === undefined) return aboutQuestion(only);
          return named.length > 0
            ? aboutCommand(asked, found)
            : {
                headline: `About ${clip(about ?? '')} there are ${count(found.length, 'question')}.`,
                lines: found.flatMap((route) => [
                  `/${route.path}: ${route.question.says}`,
                  `    ${exampleLine(route)}`,
                ]),
                data: pathsOf(found),
                choose: leadingOn('How is it asked?', questionsOf(found)),
              };
        },
      }),
    ],
  });
}
