/** A menu under an answer: what is chosen in it becomes one option of another question. */
import { ComponentType } from 'discord.js';
import type { Menu } from '../../chat/answer.ts';
import { writeAsked, type Asked } from './asked.ts';
import { coded, meantBy, writeButton, type Button } from './buttons.ts';
import { SELECT } from './limits.ts';
import type { SelectRow } from './render.ts';
import { fit, oneLine } from './text.ts';

/** The menu as a row; undefined where there is nothing to choose, or no room for what it means. */
export function menuRow(
  { question, options, option, says, choices, single = false }: Menu,
  {
    asker,
    serial,
    keep,
  }: {
    readonly asker: string;
    readonly serial: string;
    /** Keeps in the message what has no room in an id; returns what the id carries of it. */
    readonly keep: (label: string, asked: Asked) => string | undefined;
  },
): SelectRow | undefined {
  // The platform takes no value twice.
  const offered = [...new Map(choices.map((choice) => [choice.value, choice])).values()].slice(
    0,
    SELECT.options,
  );
  const asked = { question, options };
  const carries = (payload: string | undefined) =>
    payload === undefined
      ? undefined
      : writeButton({ does: 'choose', owner: coded(asker), serial, payload: `${option}=${payload}` });
  const customId = carries(writeAsked(asked)) ?? carries(keep('Choose', asked));
  if (customId === undefined || offered.length === 0) return undefined;
  return {
    type: ComponentType.ActionRow,
    components: [
      {
        type: ComponentType.StringSelect,
        custom_id: customId,
        placeholder: fit(oneLine(says), SELECT.placeholder),
        min_values: 1,
        max_values: single ? 1 : offered.length,
        options: offered.map(({ value, label }) => ({
          value: fit(value, SELECT.option),
          label: fit(oneLine(label), SELECT.option),
        })),
      },
    ],
  };
}

/** The question that a choice asks; undefined for what was not written here. */
export function chosenIn(
  button: Button,
  values: readonly string[],
  kept: readonly string[],
): Asked | undefined {
  const [, option, carried = ''] = /^([a-z][a-z0-9_]*)=(.*)$/su.exec(button.payload) ?? [];
  const asked = meantBy({ ...button, payload: carried }, kept);
  if (option === undefined || !asked || values.length === 0) return undefined;
  return { question: asked.question, options: { ...asked.options, [option]: values.join(' ') } };
}
