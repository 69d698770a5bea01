/** People whom an interaction names: the platform says who they are, by their ids and by what this place calls them. */
import type { Maker } from '../../chat/context.ts';
import { Problem } from '../../core/base/problem.ts';
import { personNamed } from './typed.ts';

/** Those whom an interaction names, by their ids. */
export type People = ReadonlyMap<string, Maker>;

/** How a person is written in an option’s text. */
export const mentionOf = (id: string) => `<@${id}>`;

/** The people of an option. Throws Problem: person-is-a-bot. */
export function peopleAmong(people: readonly (Maker & { readonly bot: boolean })[], option: string): People {
  for (const { bot, name } of people) {
    if (bot) {
      throw new Problem('person-is-a-bot', `${name} is a bot, and makes no motifs.`, {
        option,
        hint: 'Choose somebody who crochets.',
      });
    }
  }
  return new Map(people.map(({ id, name }) => [id, { id, name }]));
}

/** Whom a typed text means: a mention, with the name that the platform says; undefined for anything else. */
export function whoIs(typed: string, people: People = new Map()): Maker | undefined {
  const meant = personNamed(typed);
  return meant && (people.get(meant.id) ?? meant);
}
