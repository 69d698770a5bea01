/** The questions in words, read off their declarations: for the help page and for the README. */
import { isRequired, metaOf } from './options.ts';
import type { Route, Registry } from './registry.ts';

export interface OptionWords {
  readonly name: string;
  readonly says: string;
  readonly required: boolean;
  readonly example: string;
}

/** A question's options, those that must be given first. */
export function optionWords({ question }: Route): OptionWords[] {
  const options = Object.entries(question.options).map(([name, schema]) => {
    const { says, example } = metaOf(schema);
    return { name, says, required: isRequired(schema), example };
  });
  return [...options.filter(({ required }) => required), ...options.filter(({ required }) => !required)];
}

/** The line that works, as a person would type it. */
export const exampleLine = ({ path, question }: Route) => `/${path} ${question.example}`.trim();

/** All questions as Markdown, a table for each command. */
export function referenceMarkdown(registry: Registry): string {
  const cell = (text: string) => text.replaceAll('|', '\\|');
  return registry.commands
    .map(({ name, says }) => {
      const rows = registry.routes
        .filter(({ command }) => command.name === name)
        .map((found) => {
          const options = optionWords(found).map((option) =>
            option.required ? `**${option.name}**` : option.name,
          );
          return `| \`/${found.path}\` | ${cell(found.question.says)} | ${options.join(', ') || 'none'} | \`${cell(exampleLine(found))}\` |`;
        });
      return [
        `### /${name}`,
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
