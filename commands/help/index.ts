import type { Answer } from '../../src/chat/answer.ts';
import { command, question, type Command } from '../../src/chat/command.ts';
import { suggest } from '../../src/core/base/nearest-name.ts';
import { readLine } from '../../src/chat/line.ts';
import { opt } from '../../src/chat/options.ts';
import { exampleLine, optionWords } from '../../src/chat/reference.ts';
import { Registry } from '../../src/chat/registry.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { clip } from '../../src/core/base/quantity.ts';
import { count } from '../../src/core/base/reader.ts';

/** The help page of these commands, itself a question like any other. */
export function help(commands: readonly Command[]) {
  const registry = new Registry(commands);
  const paths = registry.routes.map(({ path }) => path);
  return command({
    name: 'help',
    says: 'What can be asked here, and how',
    questions: [
      question({
        says: 'Lists the questions, or shows how one of them is asked',
        options: {
          about: opt
            .text(
              {
                says: 'A question or a command, like border or stitches row',
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
        refused: { line: 'about:weaving', option: 'about' },
        asked: {
          ways: ['help'],
          also: 'yours which new done',
          not: 'gauge border motif blanket row stitch count evenly weigh hook yarn ball group',
          marks: { about: { never: true } },
          phrases: ['help', 'what can you do'],
        },
        answer({ about }): Answer {
          if (about === undefined) {
            return {
              headline: `There are ${count(registry.routes.length, 'question')} to ask; /help about: one of them shows how.`,
              lines: commands.flatMap(({ name, says }) => [
                `/${name}: ${says}`,
                ...registry.routes
                  .filter((found) => found.command.name === name && found.question.name !== undefined)
                  .map((found) => `    /${found.path}: ${found.question.says}`),
              ]),
              data: { questions: paths },
            };
          }
          const asked = about.toLowerCase().replace(/^\//, '').replace(/\s+/g, ' ');
          const found = registry.routes.filter(({ path }) => path === asked || path.startsWith(`${asked} `));
          if (found.length === 0) {
            throw new Problem('no-such-question', `There is no question called ${clip(about)}.`, {
              option: 'about',
              hint: suggest(
                asked,
                [...paths, ...commands.map(({ name }) => name)],
                () => 'Ask /help for all of them.',
              ),
            });
          }
          return {
            headline:
              found.length === 1
                ? `/${found[0]?.path ?? asked}: ${found[0]?.question.says ?? ''}.`
                : `/${asked} answers ${count(found.length, 'question')}.`,
            lines: found.flatMap((one) => [
              exampleLine(one),
              ...(found.length === 1
                ? optionWords(one).map(
                    ({ name, says, required, example }) =>
                      `    ${name}${required ? ' (needed)' : ''}: ${says}. For example ${name}:${example}`,
                  )
                : [`    ${one.question.says}`]),
            ]),
            data: { questions: found.map(({ path }) => path) },
            ...(found.length === 1 &&
            found[0] &&
            found[0].question.changes !== true &&
            !found[0].question.before
              ? {
                  actions: [
                    {
                      label: 'Ask that',
                      question: found[0].path,
                      options: readLine(exampleLine(found[0])).options,
                    },
                  ],
                }
              : {}),
          };
        },
      }),
    ],
  });
}
