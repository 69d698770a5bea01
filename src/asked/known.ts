/** What is saved of the one who asks, as far as plain words can mean it: names, and what fills an option that was left out. */
import type { Context } from '../chat/context.ts';
import { cm, count, g, m, t, num } from '../core/base/reader.ts';
import { defined } from '../core/base/defined.ts';
import { CM_PER_INCH, G_PER_OUNCE, M_PER_YARD } from '../standards/units.ts';
import type { MakerDoc } from '../projects/schema.ts';
import type { KnownName } from './pieces/piece.ts';
import type { Around, Fill } from './read.ts';
import { tokensOf } from './tokens.ts';

const wordsOf = (name: string) => tokensOf(name).map(({ text }) => text);

/** What is saved that a question needs, by the names that questions give it. */
export type SavedKind = 'motif' | 'blanket' | 'group' | 'along' | 'motif-removed' | 'blanket-removed';

const WHOLE = /^(all|total)$/;

type Of = Parameters<Fill>[1] & {
  /** The motif that is named, or else the current one. */
  readonly motif: MakerDoc['motifs'][number] | undefined;
  readonly blanket: MakerDoc['blankets'][number] | undefined;
};
type Filled = ReturnType<Fill>;

/** Whether what was said of a shape and its size is the saved motif's. */
const isOfMotif = ({ motif, options: { shape } }: Of) => shape === undefined || shape === motif?.shape;
const hasSize = ({ motif, options: { size } }: Of) => size === String(motif?.size);
const agrees = (of: Of) => isOfMotif(of) && (of.options['size'] === undefined || hasSize(of));

const fromMotif = ({ motif }: Of, text: string, said: string): Filled => ({
  text,
  said: `${said}, from your saved motif ${motif?.name ?? ''}.`,
});
const fromBlanket = ({ blanket }: Of, text: string, said: string): Filled => ({
  text,
  said: `${said}, from your saved blanket ${blanket?.name ?? ''}.`,
});

/** Units, each with how much of the stored one it is. */
type Units = Readonly<Record<string, number>>;
const LENGTHS: Units = { cm: 1, in: CM_PER_INCH };
const YARN_LENGTHS: Units = { m: 1, yd: M_PER_YARD };
const WEIGHTS: Units = { g: 1, oz: G_PER_OUNCE };

/** A stored measure in the unit in which it is written shortest, which is the one it was typed in: 155.448 m are `170yd`. */
function asTyped(value: number, units: Units): string {
  const [first = '', ...others] = Object.entries(units).flatMap(([unit, size]) => {
    const number = Number((value / size).toFixed(4));
    return Math.abs(number * size - value) <= value * ROUNDED ? [`${number}${unit}`] : [];
  });
  const shortest = others.find((text) => text.length < first.length) ?? first;
  return shortest === '' ? `${value}${Object.keys(units)[0] ?? ''}` : shortest;
}
/** What four decimals may be off, by share. */
const ROUNDED = 1e-5;

const ballText = ({ m: long, g: heavy }: { readonly m: number; readonly g: number }) =>
  `${asTyped(long, YARN_LENGTHS)}/${asTyped(heavy, WEIGHTS)}`;

/** The gauge of a motif, as it is typed. */
function gaugeOf(of: Of): Filled {
  const gauge = isOfMotif(of) ? of.motif?.gauge : undefined;
  if (!gauge) return undefined;
  const { stitches, rows, over } = gauge;
  const written = (digits: number, by: string) =>
    `${num(stitches, digits)}${rows === undefined ? '' : `${by}${num(rows, digits)}`}`;
  return fromMotif(
    of,
    `${written(3, 'x')} over ${asTyped(over, LENGTHS)}`,
    `The ${t('gauge')} is ${written(2, ' × ')} over ${cm(over)}`,
  );
}

/** What one of a motif weighs. */
function weightOf(of: Of): Filled {
  const weight = isOfMotif(of) ? of.motif?.weight : undefined;
  return weight === undefined
    ? undefined
    : fromMotif(of, asTyped(weight, WEIGHTS), `One weighs ${g(weight)}`);
}

/** The ball that a motif was worked from, or else the one that all yarns of a blanket share. */
function ballOf(of: Of): Filled {
  const own = of.motif?.ball;
  if (own) return fromMotif(of, ballText(own), `A ball has ${m(own.m)} in ${g(own.g)}`);
  const balls = new Map(
    (of.blanket?.yarns ?? []).flatMap(({ ball }) =>
      ball === undefined ? [] : [[ballText(ball), ball] as const],
    ),
  );
  const [only] = balls;
  return only && balls.size === 1
    ? fromBlanket(of, only[0], `A ball has ${m(only[1].m)} in ${g(only[1].g)}`)
    : undefined;
}

/** What fills each option from a saved motif or blanket; undefined where what was said speaks of another one. */
const FILLS: ReadonlyMap<string, (of: Of) => Filled> = new Map<string, (of: Of) => Filled>([
  [
    'shape',
    (of) =>
      of.motif && agrees(of) ? fromMotif(of, of.motif.shape, `The shape is ${of.motif.shape}`) : undefined,
  ],
  [
    'size',
    (of) =>
      of.motif && agrees(of)
        ? fromMotif(of, String(of.motif.size), `The size is ${of.motif.size}`)
        : undefined,
  ],
  [
    'other_size',
    (of) => {
      const size = of.motif?.otherSize;
      return size !== undefined && agrees(of) && hasSize(of)
        ? fromMotif(of, String(size), `The other size is ${size}`)
        : undefined;
    },
  ],
  [
    'stitch',
    (of) =>
      of.motif && agrees(of) && hasSize(of)
        ? fromMotif(of, `US ${of.motif.stitch}`, `Worked in ${t(of.motif.stitch)}`)
        : undefined,
  ],
  ['gauge', gaugeOf],
  [
    'side',
    (of) => {
      const side = of.motif?.side;
      return side === undefined ? undefined : fromMotif(of, asTyped(side, LENGTHS), `A side is ${cm(side)}`);
    },
  ],
  ['each', weightOf],
  // Where an option takes what one motif weighs by the name of motif, its name is none.
  ['motif', weightOf],
  [
    'columns',
    (of) =>
      of.blanket && of.options['rows'] === undefined
        ? fromBlanket(of, String(of.blanket.columns), count(of.blanket.columns, 'column'))
        : undefined,
  ],
  [
    'rows',
    (of) => {
      const { blanket, options } = of;
      const same = options['columns'] === undefined || options['columns'] === String(blanket?.columns);
      return blanket && same ? fromBlanket(of, String(blanket.rows), count(blanket.rows, 'row')) : undefined;
    },
  ],
  [
    'motifs',
    (of) => {
      const isAll = [...of.heard.present.keys()].some((sense) => WHOLE.test(sense));
      const motifs = of.blanket?.layout.length;
      return motifs === undefined || !isAll
        ? undefined
        : fromBlanket(of, String(motifs), `All ${count(motifs, 'motif')}`);
    },
  ],
  ['ball', ballOf],
]);

function filler(doc: MakerDoc): Fill {
  const blanket = doc.blankets.find(({ name }) => name === doc.current.blanket);
  return (option, reading) => {
    const named = reading.heard.names.find(({ known }) => known.of === 'motif')?.known.name;
    const motif = doc.motifs.find(({ name }) => name === (named ?? doc.current.motif));
    return FILLS.get(option)?.({ ...reading, motif, blanket });
  };
}

/** What was done last of what can be taken back: a count, or a motif or blanket that was changed or removed. */
function lastDone({ bin, progress, current }: MakerDoc): Around['last'] {
  const done = [
    ...progress.flatMap(({ motif, history }) => {
      const { at } = history.at(-1) ?? {};
      const options: Readonly<Record<string, string>> = motif === current.motif ? {} : { motif };
      return at === undefined ? [] : [{ at, undoes: 'count' as const, options }];
    }),
    ...bin.map(({ at, kind }) => ({
      at,
      undoes: kind === 'motif' ? ('motif' as const) : ('blanket' as const),
      options: {},
    })),
  ];
  return done.sort((a, b) => Date.parse(b.at) - Date.parse(a.at))[0];
}

/** So many of the latest group blankets of a server are read for their kinds, and as many of the channel. */
const READ_GROUPS = 5;

/** The latest plans of group blankets that somebody here is likely to mean: not all of a large server are read. */
async function plansNear(
  { projects, place }: Pick<Context, 'projects' | 'place'>,
  groups: Awaited<ReturnType<Context['projects']['groups']['listed']>>,
) {
  const near = groups.filter(({ channel }) => channel !== undefined && channel === place.channel);
  const read = new Set([...groups.slice(-READ_GROUPS), ...near.slice(-READ_GROUPS)].map(({ id }) => id));
  return (await projects.groups.these([...read])).map(({ state }) => state.plan);
}

/** Names of one kind, each once; single letters are no names. */
const namesOf = (of: KnownName['of'], listed: Iterable<string>): KnownName[] =>
  [...new Set(listed)].flatMap((name) => {
    const words = wordsOf(name);
    return words.length > 0 && name.length > 1 ? [{ words, name, of }] : [];
  });

/** What stands around a phrase of hers. */
export async function aroundOf({
  projects,
  maker,
  place,
}: Pick<Context, 'projects' | 'maker' | 'place'>): Promise<Around> {
  const [doc, groups, alongs] = await Promise.all([
    projects.maker(maker.id, maker.name),
    projects.groups.listed(place.server),
    projects.alongs.listed(place.server),
  ]);
  const { motifs, blankets, bin } = doc;
  const plans = await plansNear({ projects, place }, groups);
  const colours = [
    ...blankets.flatMap(({ yarns }) => yarns.map(({ colour }) => colour)),
    ...motifs.flatMap(({ runs }) => runs.map(({ colour }) => colour)),
  ];
  const name = (one: { readonly name: string }) => one.name;
  const has: Readonly<Record<SavedKind, boolean>> = {
    motif: motifs.length > 0,
    blanket: blankets.length > 0,
    group: groups.length > 0,
    // Only whoever takes part, or leads one, is stuck at one and done with its parts.
    along: alongs.some(({ makers }) => makers.includes(maker.id)),
    'motif-removed': bin.some(({ kind }) => kind === 'motif'),
    'blanket-removed': bin.some(({ kind }) => kind === 'blanket'),
  };
  return {
    names: [
      ...namesOf('motif', motifs.map(name)),
      ...namesOf('blanket', blankets.map(name)),
      ...namesOf('colour', colours),
      ...namesOf('group', groups.map(name)),
      ...namesOf('along', alongs.map(name)),
      ...namesOf(
        'kind',
        plans.flatMap(({ kinds }) => kinds.map(name)),
      ),
    ],
    saved: new Set(Object.entries(has).flatMap(([kind, there]) => (there ? [kind] : []))),
    fill: filler(doc),
    ...defined({ last: lastDone(doc) }),
  };
}
