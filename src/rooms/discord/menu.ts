/** A menu under an answer: what is chosen in it becomes one option of another question. */
import { ComponentType } from 'discord.js';
import type { Menu } from '../../chat/answer.ts';
import { readAsked, writeAsked, type Asked } from './asked.ts';
import { coded, writeButton, type Button } from './buttons.ts';
import { SELECT } from './limits.ts';
import type { SelectRow } from './render.ts';
import { fit, oneLine } from './text.ts';

/** The menu as a row; undefined where there is nothing to choose, or no room for what it means. */
export function menuRow(
  { question, options, option, says, choices }: Menu,
  { asker, serial }: { readonly asker: string; readonly serial: string },
): SelectRow | undefined {
  const offered = choices.slice(0, SELECT.options);
  const payload = `${option}=${writeAsked({ question, options })}`;
  const customId = writeButton({ does: 'choose', owner: coded(asker), serial, payload });
  if (customId === undefined || offered.length === 0) return undefined;
  return {
    type: ComponentType.ActionRow,
    components: [
      {
        type: ComponentType.StringSelect,
        custom_id: customId,
        placeholder: fit(oneLine(says), SELECT.placeholder),
        min_values: 1,
        max_values: offered.length,
        options: offered.map(({ value, label }) => ({
          value: fit(value, SELECT.option),
          label: fit(oneLine(label), SELECT.option),
        })),
      },
    ],
  };
}

/** The question that a choice asks; undefined for what was not written here. */
export function chosenIn({ payload }: Button, values: readonly string[]): Asked | undefined {
  const [, option, carried = ''] = /^([a-z][a-z0-9_]*)=(.*)$/su.exec(payload) ?? [];
  const asked = readAsked(carried);
  if (option === undefined || !asked || values.length === 0) return undefined;
  return { question: asked.question, options: { ...asked.options, [option]: values.join(' ') } };
}
