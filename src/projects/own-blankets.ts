/** A maker's own blanket of a make-along among what she has saved. Functions on the draft of her document. */
import { isDeepStrictEqual } from 'node:util';
import { defined } from '../core/base/defined.ts';
import { findMeant, sameName } from '../core/base/nearest-name.ts';
import { Problem } from '../core/base/problem.ts';
import { minutesOf, type Own } from '../core/along/own.ts';
import type { AlongPlan } from '../core/along/events.ts';
import type { Cell } from '../core/blanket/layout.ts';
import type { BlanketSpec } from '../core/blanket/pieces.ts';
import { planOf } from '../core/yarn/motif.ts';
import { addBlanket, putBlanket } from './blankets.ts';
import { keepMotif } from './motifs.ts';
import type { Blanket, MakerDoc, Motif } from './schema.ts';

export interface SavedOwn {
  /** Unset where what is made is a motif by itself. */
  readonly blanket?: string;
  readonly motifs: readonly string[];
  /** Motifs whose names were taken by others of hers: under which name each is kept. */
  readonly renamed: readonly { readonly of: string; readonly to: string }[];
  readonly replaced: boolean;
}

/** Her motifs as she keeps them: those of one unnamed colour say it, for a colour is not to change with a name. */
const motifsOf = (own: Own): Motif[] =>
  own.spec.kinds.map((kind) =>
    defined({
      ...kind,
      weighings: kind.weighings && [...kind.weighings],
      runs: kind.runs.length > 0 ? [...kind.runs] : [{ colour: kind.name, rows: planOf(kind).rows.length }],
      minutes: minutesOf(own, kind),
    }),
  );

/** The same piece of work, whatever it is called. */
const isAlike = ({ name: _, ...one }: Motif, { name: __, ...other }: Motif): boolean =>
  isDeepStrictEqual(one, other);

/** A name that no motif of hers has: `furrow`, or else `furrow 2`. */
function freeName(doc: MakerDoc, name: string, taken: ReadonlySet<string>): string {
  for (let number = 1; ; number++) {
    const tried = number === 1 ? name : `${name} ${number}`;
    if (!taken.has(tried.toLowerCase()) && findMeant(doc.motifs, tried) === undefined) return tried;
  }
}

const mutable = (spec: BlanketSpec): Pick<Blanket, 'joining' | 'border' | 'yarns' | 'reserve'> =>
  structuredClone({
    joining: spec.joining,
    border: { ...spec.border, rounds: [...spec.border.rounds] },
    yarns: [...spec.yarns],
    reserve: spec.reserve,
  });

/**
 * Keeps her own blanket under a name, with its motifs, and makes them the current ones. With `replace` it takes the place of what she kept
 * under that name before, which can be brought back for a day; motifs of hers that other blankets are made of are left alone.
 *
 * Throws Problem: blanket-name-taken, motif-name-taken, and where there is no room for more.
 */
export function keepOwn(
  doc: MakerDoc,
  {
    plan,
    own,
    layout,
    name,
  }: { readonly plan: AlongPlan; readonly own: Own; readonly layout: readonly Cell[]; readonly name: string },
  now: Date,
  replace: boolean,
): SavedOwn {
  const single = plan.columns === 1 && plan.rows === 1 && own.extent.columns * own.extent.rows === 1;
  const before = single ? undefined : doc.blankets.find((blanket) => sameName(blanket.name, name));
  if (before && !replace)
    throw new Problem('own-blanket-there', `You have a blanket called ${before.name} already.`, {
      option: 'as',
      hint: 'Give yours another name, or put it in the place of that one with replace:yes; what was there can be brought back for a day.',
    });
  const elsewhere = (kind: string) =>
    doc.blankets.some(
      (blanket) => blanket !== before && blanket.kinds.some((other) => sameName(other, kind)),
    );
  const renamed: { of: string; to: string }[] = [];
  const names: string[] = [];
  for (const [place, motif] of motifsOf(own).entries()) {
    const was = before?.kinds[place];
    const taken = new Set(names.map((one) => one.toLowerCase()));
    const own =
      // What she kept of it before is kept anew in its place, unless something else rests on it.
      was !== undefined && isNamedAfter(was, motif.name) && !elsewhere(was) && !taken.has(was.toLowerCase())
        ? was
        : single && replace
          ? motif.name
          : undefined;
    const there = findMeant(doc.motifs, own ?? motif.name);
    const same = there !== undefined && !taken.has(there.name.toLowerCase()) && isAlike(there, motif);
    const to = same ? there.name : (own ?? freeName(doc, motif.name, taken));
    if (!same) keepMotif(doc, { ...motif, name: to }, now, own !== undefined);
    if (!sameName(to, motif.name)) renamed.push({ of: motif.name, to });
    names.push(to);
  }
  const [first] = names;
  if (first !== undefined) doc.current.motif = first;
  if (single) return { motifs: names, renamed, replaced: replace };
  const { columns, rows } = own.extent;
  const blanket: Blanket = {
    name: before?.name ?? name,
    kinds: names,
    columns,
    rows,
    layout: [...layout],
    setting: plan.setting,
    ...mutable(own.spec),
  };
  if (before) putBlanket(doc, before, blanket, now);
  else addBlanket(doc, blanket, now);
  return { blanket: blanket.name, motifs: names, renamed, replaced: before !== undefined };
}

/** `furrow`, or `furrow 2`, which it was kept as where the name was taken. */
const isNamedAfter = (kept: string, name: string): boolean =>
  sameName(kept, name) || sameName(kept.replace(/ \d+$/, ''), name);
