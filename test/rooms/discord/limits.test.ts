/** The limits that answers are fitted to and those that the stand-in enforces were written down apart, each from its source. */
import { describe, expect, it } from 'vitest';
import {
  BUTTONS,
  COMMAND,
  EMBED,
  FILE_BYTES,
  MESSAGE,
  REQUEST_BYTES,
  SUGGESTIONS,
} from '../../../src/rooms/discord/limits.ts';
import { LIMITS } from './stand-in/index.ts';

describe('the limits that answers are fitted to', () => {
  it('are those that the stand-in enforces', () => {
    expect({
      content: MESSAGE.content,
      embeds: MESSAGE.embeds,
      files: MESSAGE.files,
      altText: MESSAGE.altText,
      customId: BUTTONS.customId,
      label: BUTTONS.label,
      buttons: BUTTONS.inRow,
      rows: BUTTONS.rows,
      sum: EMBED.total,
      title: EMBED.title,
      description: EMBED.description,
      fields: EMBED.fields,
      fieldName: EMBED.fieldName,
      fieldValue: EMBED.fieldValue,
      footer: EMBED.footer,
      choices: SUGGESTIONS,
      file: FILE_BYTES,
      request: REQUEST_BYTES,
      command: COMMAND,
    }).toEqual({
      content: LIMITS.content,
      embeds: LIMITS.embeds,
      files: LIMITS.files,
      altText: LIMITS.altText,
      customId: LIMITS.customId,
      label: LIMITS.label,
      buttons: LIMITS.buttons,
      rows: LIMITS.rows,
      sum: LIMITS.embed.sum,
      title: LIMITS.embed.title,
      description: LIMITS.embed.description,
      fields: LIMITS.embed.fields,
      fieldName: LIMITS.embed.fieldName,
      fieldValue: LIMITS.embed.fieldValue,
      footer: LIMITS.embed.footer,
      choices: LIMITS.choices,
      file: LIMITS.file,
      request: LIMITS.request,
      command: {
        options: LIMITS.options,
        choiceName: LIMITS.choice,
        choiceValue: LIMITS.choice,
        text: LIMITS.optionLength,
        total: LIMITS.command,
      },
    });
  });
});
