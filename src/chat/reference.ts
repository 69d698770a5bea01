/** The questions in words, read off their declarations: for the help page and for the pages of the documentation. */
import { isRequired, metaOf } from './options.ts';
import type { Route, Registry } from './registry.ts';

export interface OptionWords {
  readonly name: string;
  readonly says: string;
  readonly required: boolean;
  readonly example: string;
  /** What can be chosen; empty where anything may be typed. */
  readonly choices: readonly string[];
}

/** A question's options, those that must be given first. */
export function optionWords({ question }: Route): OptionWords[] {
  const options = Object.entries(question.options).map(([name, schema]) => {
    const { says, example, choices = [] } = metaOf(schema);
    return { name, says, required: isRequired(schema), example, choices: choices.map(({ value }) => value) };
  });
  return [...options.filter(({ required }) => required), ...options.filter(({ required }) => !required)];
}

/** The line that works, as a person would type it. */
export const exampleLine = ({ path, question }: Route) => `/${path} ${question.example}`.trim();

const cell = (text: string) => text.replaceAll('|', '\\|');

/** All commands as Markdown, a line each. */
export const commandsMarkdown = ({ commands }: Registry): string =>
  [
    '| command | what it answers |',
    '| --- | --- |',
    ...commands.map(({ name, says }) => `| \`/${name}\` | ${cell(says)}. |`),
  ].join('\n');

/** All questions as Markdown, a table for each command. */
export function referenceMarkdown(registry: Registry): string {
  return registry.commands
    .map(({ name, says }) => {
      const rows = registry.routes
        .filter(({ command }) => command.name === name)
        .map((route) => {
          const options = optionWords(route).map((option) =>
            option.required ? `**${option.name}**` : option.name,
          );
          return `| \`/${route.path}\` | ${cell(route.question.says)} | ${options.join(', ') || 'none'} | \`${cell(exampleLine(route))}\` |`;
        });
      return [
        `## /${name}`,
        '',
        `${says}.`,
        '',
        '| question | answers | options (**needed**) | for example |',
        '| --- | --- | --- | --- |',
        ...rows,
      ].join('\n');
    })
    .join('\n\n');
}
