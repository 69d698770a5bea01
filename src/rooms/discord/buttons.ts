/**
 * What a button carries. It says what to do and whose it is; who is asking is always taken from the press itself, so a
 * forged id can do nothing that its forger could not type.
 */
import { BUTTONS } from './limits.ts';

/** working: show it; fold: fold it; everyone: show the answer to all; ask: a line; listed: a line kept in the message. */
export type Does = 'working' | 'fold' | 'everyone' | 'ask' | 'listed';

export interface Button {
  readonly does: Does;
  /** Whose button it is, coded; '' where anyone may press. */
  readonly owner: string;
  /** Different each time a message is drawn, so that the next press of a redrawn button is another press. */
  readonly serial: string;
  /** The line, or its place in the message. */
  readonly payload: string;
}

const LETTERS: Readonly<Record<Does, string>> = {
  working: 'w',
  fold: 'f',
  everyone: 'e',
  ask: 'a',
  listed: 'n',
};
const DOES = new Map(Object.entries(LETTERS).map(([does, letter]) => [letter, does as Does]));

const CUSTOM_ID = /^([wfean])\.([0-9a-z]{0,16})\.([0-9a-z]{0,16})\.(.*)$/su;

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
