/** How the colours of one maker look: the same colour the same in every picture of hers. Functions on her document. */
import { colourOf, coloursOf, isMadeUp } from '../core/blanket/colour.ts';
import { firstOfEach, sameName } from '../core/base/nearest-name.ts';
import { runsOf } from '../core/yarn/motif.ts';
import type { MakerDoc } from './schema.ts';

/** Her blankets, the current one first. */
const blanketsOf = ({ blankets, current }: MakerDoc) =>
  [...blankets].sort((a, b) => Number(b.name === current.blanket) - Number(a.name === current.blanket));

/** What she said of each colour's look, #rrggbb: of the current blanket's yarn first, then of the others', then of a motif. */
function saidHexes(doc: MakerDoc): { readonly colour: string; readonly hex: string }[] {
  const said = [
    ...blanketsOf(doc).flatMap(({ yarns }) => yarns),
    ...doc.motifs.flatMap(({ looks = [] }) => looks),
  ];
  return said.flatMap(({ colour, hex }) => (hex === undefined ? [] : [{ colour, hex }]));
}

/** So many colours of one maker are kept apart; what is beyond has a look by its name alone. */
const MOST_APART = 1000;

/** The colours that anything of hers is in, in the order in which it was saved. */
function coloursIn(doc: MakerDoc): string[] {
  const met = new Set<string>();
  const meet = (colour: string | undefined) => {
    if (colour !== undefined) met.add(colour.toLowerCase());
    return met.size >= MOST_APART;
  };
  for (const motif of doc.motifs) for (const { colour } of runsOf(motif)) if (meet(colour)) return [...met];
  for (const { joining, border, yarns } of doc.blankets)
    for (const { colour } of [joining, ...border.rounds, ...yarns]) if (meet(colour)) return [...met];
  return [...met];
}

const known = new WeakMap<MakerDoc, ReadonlyMap<string, string>>();

/** By the name in small letters: names of colours are the same whatever their capitals. */
function looksByName(doc: MakerDoc): ReadonlyMap<string, string> {
  let looks = known.get(doc);
  if (looks === undefined) {
    // Backwards, so that what goes first is what stays.
    const hexes = new Map<string, string>();
    for (const { colour, hex } of saidHexes(doc).reverse()) hexes.set(colour.toLowerCase(), hex);
    looks = new Map(
      Object.entries(coloursOf(coloursIn(doc).map((name) => ({ name, hex: hexes.get(name) })))),
    );
    known.set(doc, looks);
  }
  return looks;
}

/**
 * The look of each of these colours of hers, #rrggbb by its name as it is spelt; what `own` says of it goes first. A document is never
 * changed in place: what was found of it holds.
 */
export function looksOf(
  doc: MakerDoc,
  names: readonly string[],
  own: readonly { readonly colour: string; readonly hex?: string | undefined }[] = [],
): Readonly<Record<string, string>> {
  const looks = looksByName(doc);
  // Names are whatever somebody wrote: none of them is looked up in a prototype.
  const all = Object.create(null) as Record<string, string>;
  for (const name of names)
    all[name] =
      own.find(({ colour, hex }) => hex !== undefined && sameName(colour, name))?.hex ??
      looks.get(name.toLowerCase()) ??
      colourOf(name);
  return all;
}

/** Which of these colours are drawn in a colour that is made up, as nothing tells how they look. */
export const madeUpOf = (doc: MakerDoc, names: readonly string[]): string[] => {
  const said = saidHexes(doc);
  return firstOfEach([...names]).filter((name) =>
    isMadeUp(name, said.find(({ colour }) => sameName(colour, name))?.hex),
  );
};

/** What is known of her yarns, the current blanket's first. */
export const yarnsOf = (doc: MakerDoc) => blanketsOf(doc).flatMap(({ yarns }) => yarns);
