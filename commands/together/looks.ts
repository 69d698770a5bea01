/** How the colours of a group blanket look: in its board, its charts and on paper alike. */
import { coloursOf } from '../../src/core/blanket/colour.ts';
import { firstOfEach } from '../../src/core/base/nearest-name.ts';
import type { GroupPlan } from '../../src/core/group/events.ts';
import { letter } from '../../src/core/blanket/layout.ts';
import { colourBorder } from '../../src/core/blanket/pieces.ts';
import type { PictureKind } from '../../src/pictures/motif.ts';
import type { Stitch } from '../../src/standards/stitches.ts';
import { runsOf, yarnOf } from '../../src/core/yarn/motif.ts';

/** Its kinds as they are drawn; one without colours is in a colour that is called as it is. */
export const groupKinds = ({ kinds }: GroupPlan): PictureKind[] =>
  kinds.map((kind, index) => ({ ...kind, runs: runsOf(kind), letter: letter(index) }));

/** Every colour of its kinds, its border and its yarns, #rrggbb by its name. */
export function groupLooks(plan: GroupPlan): Readonly<Record<string, string>> {
  const { kinds, yarns } = plan;
  const names = [
    ...kinds.flatMap((kind) => runsOf(kind).map(({ colour }) => colour)),
    ...borderOf(plan).map(({ colour }) => colour),
    ...yarns.map(({ colour }) => colour),
  ];
  return coloursOf(firstOfEach(names).map((name) => ({ name, hex: yarnOf(yarns, name)?.hex })));
}

/** The rounds of its border with the colours that its shopping lists reckon with. */
export function borderOf(plan: GroupPlan): { readonly stitch: Stitch; readonly colour: string }[] {
  const [first] = plan.kinds;
  const main = (first && runsOf(first)[0]?.colour) ?? plan.name;
  const colours = colourBorder(plan, main);
  return plan.border.rounds.map(({ stitch }, at) => ({ stitch, colour: colours[at] ?? main }));
}
