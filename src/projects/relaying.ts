/** Laying a saved blanket anew: another arrangement, setting, map or size. Functions on a blanket. */
import { defined } from '../core/base/defined.ts';
import {
  countLaid,
  isFree,
  lay,
  readLaidBy,
  turnLayout,
  writeLaidBy,
  type Arrangement,
  type Cell,
  type LaidBy,
} from '../core/blanket/layout.ts';
import { readCountsByKind, readMap } from '../core/blanket/map.ts';
import { readTurnings } from '../core/blanket/turnings.ts';
import { Problem } from '../core/base/problem.ts';
import { apportion } from '../core/blanket/apportion.ts';
import { num } from '../core/base/reader.ts';
import type { SettingKey } from '../standards/settings.ts';
import type { Blanket } from './schema.ts';

/** The part of a blanket that says what lies where. */
export type Laid = Pick<Blanket, 'kinds' | 'columns' | 'rows' | 'layout' | 'setting'>;

/** What is asked of a layout; what is left out stays as it is. */
export interface Relaying {
  readonly arrangement?: Arrangement | undefined;
  readonly setting?: SettingKey | undefined;
  readonly seed?: number | undefined;
  /** As typed: `A 0, B 1`, or `random`. */
  readonly turnings?: string | undefined;
  /** As typed: `A 12, B 8`. */
  readonly counts?: string | undefined;
  /** As typed: `ABBA/BAAB`. */
  readonly map?: string | undefined;
  readonly columns?: number | undefined;
  readonly rows?: number | undefined;
}

/** The same blanket laid as asked. Throws a Problem where that cannot be, or where two ways are asked at once. */
export function relaid<B extends Laid>(blanket: B, asked: Relaying): B {
  const was = readLaidBy(blanket.setting);
  if (asked.map !== undefined) return mapped(blanket, was, asked, asked.map);
  const arrangement = asked.arrangement ?? (asked.counts === undefined ? was.arrangement : 'scattered');
  if (asked.counts !== undefined && arrangement !== 'scattered') {
    throw new Problem(
      'counts-follow',
      `In the arrangement ${arrangement} the counts follow from the layout.`,
      {
        option: 'counts',
        hint: 'Leave counts out, or choose arrange:scattered.',
      },
    );
  }
  const laid: LaidBy = {
    arrangement,
    ...turning(was, asked, blanket.kinds),
    seed: asked.seed ?? was.seed,
  };
  const columns = asked.columns ?? blanket.columns;
  const rows = asked.rows ?? blanket.rows;
  const sameSize = columns === blanket.columns && rows === blanket.rows;
  // A seed beside turnings is theirs: the kinds are not scattered anew.
  const scatters = asked.seed !== undefined && asked.turnings === undefined;
  const kindsStay = asked.arrangement === undefined && asked.counts === undefined && !scatters && sameSize;
  if (kindsStay && blanket.layout.length > 0) {
    const layout = turnLayout(kindsIn(blanket.layout), laid, columns, rows);
    return { ...blanket, layout, setting: writeLaidBy(laid) };
  }
  const shares =
    asked.counts === undefined
      ? isFree(was.arrangement) && blanket.layout.length > 0
        ? countLaid(blanket.layout, blanket.kinds.length)
        : undefined
      : exactly(readCountsByKind(asked.counts, blanket.kinds), blanket.kinds, columns * rows);
  const layout = lay({ columns, rows, kinds: blanket.kinds.length, laid, shares });
  return { ...blanket, columns, rows, layout, setting: writeLaidBy(laid) };
}

const kindsIn = (layout: readonly Cell[]) => layout.map(({ kind }) => kind);

/** How the motifs are turned, by a setting or by turnings of one's own. Throws a Problem where both are asked. */
function turning(
  was: LaidBy,
  { setting, turnings }: Relaying,
  kinds: readonly string[],
): Pick<LaidBy, 'setting' | 'turnings'> {
  if (turnings === undefined)
    return setting === undefined
      ? { setting: was.setting, ...defined({ turnings: was.turnings }) }
      : { setting };
  if (setting !== undefined) {
    throw new Problem('turned-twice', 'A setting turns the motifs by itself.', {
      option: 'turnings',
      hint: 'Give setting or turnings, not both.',
    });
  }
  return { setting: 'upright', turnings: readTurnings(turnings, kinds) };
}

function mapped<B extends Laid>(blanket: B, was: LaidBy, asked: Relaying, text: string): B {
  const twice = (['arrangement', 'counts', 'seed', 'columns', 'rows'] as const).find(
    (name) => asked[name] !== undefined,
  );
  if (twice !== undefined) {
    throw new Problem('map-says-it', 'A map says by itself what lies where, and how many.', {
      option: twice === 'arrangement' ? 'arrange' : twice,
      hint: 'Leave that out, or leave map out.',
    });
  }
  const map = readMap(text, blanket.kinds.length);
  const ownTurns = /[0-3]/.test(text);
  const again =
    asked.setting !== undefined ? 'setting' : asked.turnings !== undefined ? 'turnings' : undefined;
  if (ownTurns && again !== undefined) {
    throw new Problem('turned-twice', 'The map turns its motifs by itself.', {
      option: again,
      hint: `Leave ${again} out, or write the map without digits.`,
    });
  }
  const laid: LaidBy = {
    arrangement: 'typed',
    ...(ownTurns ? { setting: 'upright' as const } : turning(was, asked, blanket.kinds)),
    seed: was.seed,
  };
  const { columns, rows } = map;
  return {
    ...blanket,
    columns,
    rows,
    layout: ownTurns ? [...map.layout] : turnLayout(kindsIn(map.layout), laid, columns, rows),
    setting: writeLaidBy(laid),
  };
}

/** Counts that fill the blanket. Throws a Problem with counts in the same proportion that do. */
function exactly(counts: number[], names: readonly string[], places: number): number[] {
  const sum = counts.reduce((all, count) => all + count, 0);
  if (sum === places) return counts;
  const filled = sum === 0 ? undefined : apportion(places, counts).quotas;
  throw new Problem(
    'counts-not-places',
    `Those counts come to ${num(sum)}; the blanket has ${num(places)} places.`,
    {
      option: 'counts',
      facts: { asked: sum, places },
      hint:
        filled === undefined
          ? `Give ${num(places)} in all.`
          : `In that proportion it would be counts:"${names.map((_, kind) => `${String.fromCharCode(65 + kind)} ${filled[kind] ?? 0}`).join(', ')}".`,
    },
  );
}

/** The blanket with another list of kinds; `from` says which kind of before each of the new ones is. Laid anew where its rule asks for it. */
export function withKinds<B extends Laid>(
  blanket: B,
  kinds: string[],
  from: readonly (number | undefined)[],
): B {
  const laid = readLaidBy(blanket.setting);
  const counts = countLaid(blanket.layout, blanket.kinds.length);
  const gone = blanket.kinds.findIndex(
    (_, kind) => !from.includes(kind) && (counts[kind] ?? 0) > 0 && laid.arrangement === 'typed',
  );
  if (gone >= 0) {
    throw new Problem(
      'map-uses-kind',
      `The map uses ${blanket.kinds[gone] ?? ''} ${counts[gone] ?? 0} times.`,
      {
        option: 'drop',
        hint: 'Lay a map without it first, or scatter the kinds.',
      },
    );
  }
  // Each kind keeps its own turning; a new one is not turned.
  const { turnings } = laid;
  const goesOn: LaidBy =
    turnings === undefined || turnings === 'random'
      ? laid
      : { ...laid, turnings: from.map((kind) => (kind === undefined ? 0 : (turnings[kind] ?? 0))) };
  const setting = writeLaidBy(goesOn);
  if (laid.arrangement === 'typed' || laid.arrangement === 'plain') {
    const now = blanket.layout.map(({ kind, turn }) => ({ kind: Math.max(0, from.indexOf(kind)), turn }));
    return { ...blanket, kinds, layout: now, setting };
  }
  const { columns, rows } = blanket;
  return {
    ...blanket,
    kinds,
    layout: lay({ columns, rows, kinds: kinds.length, laid: goesOn }),
    setting,
  };
}
