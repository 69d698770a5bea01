/**
 * What a button carries. It says what to do and whose it is; who is asking is always taken from the press itself, so a
 * forged id can do nothing that its forger could not type.
 */
import { readAsked, type Asked } from './asked.ts';
import { BUTTONS } from './limits.ts';

/**
 * working: show it; fold: fold it; everyone: show the answer to all; ask: another question; missing: say what it still
 * misses; choose: a menu of things; form: open a question's form; refill: open it as it was sent.
 */
export type Does = 'working' | 'fold' | 'everyone' | 'ask' | 'missing' | 'choose' | 'form' | 'refill';

export interface Button {
  readonly does: Does;
  /** Whose button it is, coded; '' where anyone may press. */
  readonly owner: string;
  /** Different each time a message is drawn, so that the next press of a redrawn button is another press. */
  readonly serial: string;
  /** The question that it means; its place among those that the message keeps; '' where it means none. */
  readonly payload: string;
}

const LETTERS: Readonly<Record<Does, string>> = {
  working: 'w',
  fold: 'f',
  everyone: 'e',
  ask: 'q',
  missing: 'm',
  choose: 'c',
  form: 'o',
  refill: 'r',
};
// A letter is never given another meaning: buttons of earlier versions stand in messages for years, and `a` and `n` were such.
const DOES = new Map(Object.entries(LETTERS).map(([does, letter]) => [letter, does as Does]));

const CUSTOM_ID = /^([wfeqmcor])\.([0-9a-z]{0,16})\.([0-9a-z]{0,16})\.(.*)$/su;

/** A platform id, shorter. Throws for what is none. */
export function coded(id: string): string {
  if (!/^\d{1,20}$/.test(id)) throw new Error('an id that is no id of the platform');
  return BigInt(id).toString(36);
}

/** The custom id; undefined where it would be too long. */
export function writeButton({ does, owner, serial, payload }: Button): string | undefined {
  const id = `${LETTERS[does]}.${owner}.${serial}.${payload}`;
  return id.length <= BUTTONS.customId ? id : undefined;
}

/** Reads a custom id; undefined for anything that this room did not write. */
export function readButton(customId: string): Button | undefined {
  const [, letter = '', owner = '', serial = '', payload = ''] = CUSTOM_ID.exec(customId) ?? [];
  const does = DOES.get(letter);
  return does === undefined ? undefined : { does, owner, serial, payload };
}

/** Different for each interaction, and short: two that draw the same message are never so many apart that it repeats. */
export const serialOf = (id: string) => (BigInt(id) % SERIALS).toString(36);
const SERIALS = 36n ** 6n;

/** The payload of a button whose question the message keeps, at this place. */
export const keptAt = (place: number) => `#${place}`;

/** The question that a button means, `kept` being those that its message keeps; undefined where there is none. */
export function meantBy({ payload }: Button, kept: readonly string[]): Asked | undefined {
  const [, place] = /^#(\d{1,2})$/.exec(payload) ?? [];
  return readAsked(place === undefined ? payload : (kept[Number(place)] ?? ''));
}
