/** What is saved of the one who asks, as far as plain words can mean it: names, and what fills an option that was left out. */
import type { Context } from '../chat/context.ts';
import { cm, count, g, m, t, num } from '../core/base/reader.ts';
import type { MakerDoc } from '../projects/schema.ts';
import type { KnownName } from './pieces/piece.ts';
import type { Around, Fill } from './read.ts';
import { tokensOf } from './tokens.ts';

const wordsOf = (name: string) => tokensOf(name).map(({ text }) => text);

/** What is saved that a question needs, by the names that questions give it. */
export type SavedKind = 'motif' | 'blanket' | 'group' | 'motif-removed' | 'blanket-removed';

const WHOLE = /^(all|total)$/;

function filler(doc: MakerDoc): Fill {
  const blanket = doc.blankets.find(({ name }) => name === doc.current.blanket);
  return (option, { options, heard }) => {
    const named = heard.names.find(({ known }) => known.of === 'motif')?.known.name;
    const motif = doc.motifs.find(({ name }) => name === (named ?? doc.current.motif));
    const agrees =
      motif !== undefined &&
      (options['shape'] === undefined || options['shape'] === motif.shape) &&
      (options['size'] === undefined ||
        Number(options['size']) === motif.size ||
        option === 'gauge' ||
        option === 'each');
    const of = (text: string, said: string) => ({
      text,
      said: `${said}, from your saved motif ${motif?.name ?? ''}.`,
    });
    const laid = (text: string, said: string) => ({
      text,
      said: `${said}, from your saved blanket ${blanket?.name ?? ''}.`,
    });
    switch (option) {
      case 'shape':
        return agrees ? of(motif.shape, `The shape is ${motif.shape}`) : undefined;
      case 'size':
        return agrees ? of(String(motif.size), `The size is ${motif.size}`) : undefined;
      case 'other_size':
        return agrees && motif.otherSize !== undefined && options['size'] === String(motif.size)
          ? of(String(motif.otherSize), `The other size is ${motif.otherSize}`)
          : undefined;
      case 'stitch':
        return agrees && options['size'] === String(motif.size)
          ? of(`US ${motif.stitch}`, `Worked in ${t(motif.stitch)}`)
          : undefined;
      case 'gauge': {
        if (!agrees || motif.gauge === undefined) return undefined;
        const { stitches, rows, over } = motif.gauge;
        return of(
          `${num(stitches, 3)}${rows === undefined ? '' : `x${num(rows, 3)}`} over ${Number(over.toFixed(4))}cm`,
          `The ${t('gauge')} is ${num(stitches, 2)}${rows === undefined ? '' : ` × ${num(rows, 2)}`} over ${cm(over)}`,
        );
      }
      case 'side':
        return motif?.side === undefined
          ? undefined
          : of(`${Number(motif.side.toFixed(4))}cm`, `A side is ${cm(motif.side)}`);
      case 'each':
        return agrees && motif.weight !== undefined
          ? of(`${Number(motif.weight.toFixed(3))}g`, `One weighs ${g(motif.weight)}`)
          : undefined;
      case 'columns':
        return blanket && options['rows'] === undefined
          ? laid(String(blanket.columns), count(blanket.columns, 'column'))
          : undefined;
      case 'rows':
        return blanket && (options['columns'] === undefined || options['columns'] === String(blanket.columns))
          ? laid(String(blanket.rows), count(blanket.rows, 'row'))
          : undefined;
      case 'motifs': {
        if (!blanket || ![...heard.present.keys()].some((sense) => WHOLE.test(sense))) return undefined;
        return laid(String(blanket.layout.length), `All ${count(blanket.layout.length, 'motif')}`);
      }
      case 'ball': {
        const balls = new Map(
          (blanket?.yarns ?? []).flatMap(({ ball }) =>
            ball === undefined ? [] : [[`${ball.m}m/${ball.g}g`, ball] as const],
          ),
        );
        const [only] = balls;
        return only && balls.size === 1
          ? laid(only[0], `A ball has ${m(only[1].m)} in ${g(only[1].g)}`)
          : undefined;
      }
      default:
        return undefined;
    }
  };
}

/** So many of the latest group blankets of a server are read for their kinds, and as many of the channel. */
const READ_GROUPS = 5;

/** What stands around a phrase of hers. */
export async function aroundOf({
  projects,
  maker,
  place,
}: Pick<Context, 'projects' | 'maker' | 'place'>): Promise<Around> {
  const [doc, groups] = await Promise.all([
    projects.maker(maker.id, maker.name),
    projects.groups.listed(place.server),
  ]);
  // Kinds are known by those of the blankets that somebody here is likely to mean: not all of a large server are read.
  const near = groups.filter(({ channel }) => channel !== undefined && channel === place.channel);
  const read = new Set([...groups.slice(-READ_GROUPS), ...near.slice(-READ_GROUPS)].map(({ id }) => id));
  const plans = (await projects.groups.these([...read])).map(({ state }) => state.plan);
  const names: KnownName[] = [];
  const saved = new Set<SavedKind>();
  const put = (of: KnownName['of'], listed: Iterable<string>) => {
    for (const name of new Set(listed)) {
      const words = wordsOf(name);
      if (words.length > 0 && name.length > 1) names.push({ words, name, of });
    }
  };
  put(
    'motif',
    doc.motifs.map(({ name }) => name),
  );
  put(
    'blanket',
    doc.blankets.map(({ name }) => name),
  );
  put('colour', [
    ...doc.blankets.flatMap(({ yarns }) => yarns.map(({ colour }) => colour)),
    ...doc.motifs.flatMap(({ runs }) => runs.map(({ colour }) => colour)),
  ]);
  put(
    'group',
    groups.map(({ name }) => name),
  );
  put(
    'kind',
    plans.flatMap(({ kinds }) => kinds.map(({ name }) => name)),
  );
  if (doc.motifs.length > 0) saved.add('motif');
  if (doc.blankets.length > 0) saved.add('blanket');
  if (groups.length > 0) saved.add('group');
  if (doc.bin.some(({ kind }) => kind === 'motif')) saved.add('motif-removed');
  if (doc.bin.some(({ kind }) => kind === 'blanket')) saved.add('blanket-removed');
  return { names, saved, fill: filler(doc) };
}
