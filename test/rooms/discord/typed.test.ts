import { ApplicationCommandOptionType as Type, type CommandInteractionOption } from 'discord.js';
import { describe, expect, it } from 'vitest';
import { readCommand } from '../../../src/rooms/discord/typed.ts';

describe('A command', () => {
  it('takes a name for a name, also one for which the client finds a person', () => {
    // Where people are named beside it, the client looks every value up among them as a key of a plain object.
    const found = () => true;
    const data = [
      {
        name: 'name',
        type: Type.String,
        value: 'hasOwnProperty',
        user: found,
        member: found,
        attachment: found,
      },
      { name: 'motifs', type: Type.Integer, value: 3 },
    ] as unknown as CommandInteractionOption[];
    const { typed, attached, people } = readCommand('motif', data);
    expect(typed).toEqual({ name: 'hasOwnProperty', motifs: '3' });
    expect(attached).toEqual([]);
    expect(people.size).toBe(0);
  });
});
