/** How the colours of a group blanket look: in its board, its charts and on paper alike. */
import { coloursOf } from '../../src/core/blanket/colour.ts';
import { firstOfEach } from '../../src/core/base/nearest-name.ts';
import type { GroupPlan } from '../../src/core/group/events.ts';
import { runsOf, yarnOf } from '../../src/core/yarn/motif.ts';

/** Every colour of its kinds, its border and its yarns, #rrggbb by its name. */
export function groupLooks({ kinds, yarns, border }: GroupPlan): Readonly<Record<string, string>> {
  const names = [
    ...kinds.flatMap((kind) => runsOf(kind).map(({ colour }) => colour)),
    ...border.rounds.flatMap(({ colour }) => (colour === undefined ? [] : [colour])),
    ...yarns.map(({ colour }) => colour),
  ];
  return coloursOf(firstOfEach(names).map((name) => ({ name, hex: yarnOf(yarns, name)?.hex })));
}
