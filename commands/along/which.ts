/** Which make-along is meant. */
import type { Context } from '../../src/chat/context.ts';
import { opt } from '../../src/chat/options.ts';
import { LONGEST_NAME } from '../../src/core/base/limits.ts';
import { Problem } from '../../src/core/base/problem.ts';
import type { Part } from '../../src/core/along/events.ts';
import type { AlongState } from '../../src/core/along/state.ts';
import { MOST_PARTS } from '../../src/core/along/propose.ts';
import type { AlongDoc } from '../../src/projects/alongs.ts';
import { doing, whichKept } from '../shared/which-kept.ts';

export interface AlongInHand {
  readonly doc: AlongDoc;
  readonly state: AlongState;
}

/** The option that names a make-along; the channel's own is meant where it is left out. */
export const nameOption = opt
  .text(
    {
      says: 'Which make-along; this channel’s if not given',
      suggest: async (typed, context) =>
        // Offered at every key: by what they are called alone, without reading them.
        (await context.projects.alongs.listed(context.place.server))
          .map(({ name }) => ({ value: name }))
          .filter(({ value }) => value.toLowerCase().includes(typed.toLowerCase())),
    },
    { max: LONGEST_NAME, example: 'Bean row class' },
  )
  .optional();

/** The make-along of that name, or the channel’s, or the only one of the server, or of hers. Throws a Problem that names those there are. */
export async function whichAlong(context: Context, name: string | undefined): Promise<AlongInHand> {
  const { alongs } = context.projects;
  try {
    return await whichKept(alongs, context, name, {
      called: 'make-along',
      code: 'along',
      opening: 'A teacher opens one from a saved blanket: /along open blanket:"…" starts:2031-01-06.',
    });
  } catch (error) {
    if (!(error instanceof Problem) || error.code !== 'which-along') throw error;
    // Of several, the one that she has anything to do with.
    const hers = (await alongs.listed(context.place.server)).filter(({ makers }) =>
      makers.includes(context.maker.id),
    );
    const [found] = hers.length === 1 ? await alongs.these(hers.map(({ id }) => id)) : [];
    if (found) return found;
    throw error;
  }
}

/** What the form of joining asks: what she makes it with comes before how large it is to be. */
export const JOIN_ASKS = ['gauge', 'ball', 'hook', 'colours', 'for'] as const;
/** What the form of being stuck asks. */
export const STUCK_ASKS = ['row', 'counts', 'words', 'help'] as const;

/** A button about a part carries the id that stays its own, whatever number it has by the time it is pressed. */
export const byId = ({ id }: Pick<Part, 'id'>) => ({ lasting: { part: `id${id}` } });

export const partOption = (says = 'Which part, by its number; the one you have before you if not given') =>
  opt.inList(says, { max: MOST_PARTS, example: '2' });

/**
 * Who does something from a button or a form that may be pressed and sent again and again: what arrives twice is done once, and what she
 * says anew after she took it back, or after she left, is said anew.
 */
export function onceMore(context: Context, { events }: AlongDoc): ReturnType<typeof doing> {
  const who = doing(context);
  const takenBack = events.filter(
    ({ by, did }) => by === who.by && (did === 'undone' || did === 'left'),
  ).length;
  return takenBack === 0 ? who : { ...who, once: `${who.once}.${takenBack}` };
}
