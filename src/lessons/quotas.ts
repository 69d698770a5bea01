/** A group's quotas: what is still open. */
import { STILL_OPEN } from '../core/group/still-open.ts';
import { lesson, pick, solveBy } from './lesson.ts';

export const quotas = lesson({
  name: 'quotas',
  title: 'A group’s quotas',
  needs: [],
  idea: 'A group’s blanket wants so many motifs of each kind, and some spare. What somebody has pledged, what has been handed in and waits, and what is accepted are all spoken for: each motif is in one of the three, never in two. The rest is open.',
  example: {
    given: { cells: 24, spares: 2, pledged: 7, waiting: 3, accepted: 9 },
    line: 'together board',
  },
  practice: {
    draw(chance) {
      const cells = pick(chance, 20, 60);
      return {
        cells,
        spares: pick(chance, 2, 4),
        pledged: pick(chance, 5, Math.floor(cells / 4)),
        waiting: pick(chance, 2, 5),
        accepted: pick(chance, 4, Math.floor(cells / 3)),
      };
    },
    says: ({ cells, spares, pledged, waiting, accepted }) =>
      `The blanket has ${cells} places for a kind, and ${spares} spare are wanted. ${accepted} are accepted, ${waiting} are handed in and wait, ${pledged} more are pledged and not yet handed in. How many are open?`,
    asks: () => ({ kind: 'count', of: 'motifs' }),
    solve: (given) => solveBy(STILL_OPEN, given),
    slips: [
      {
        key: 'spares-forgotten',
        value: ({ cells, pledged, waiting, accepted }) => cells - pledged - waiting - accepted,
        says: () => 'The spare ones were left out: they are wanted too.',
      },
      {
        key: 'waiting-forgotten',
        value: ({ cells, spares, pledged, accepted }) => cells + spares - pledged - accepted,
        says: () => 'What is handed in and waits was left out. Somebody has made it: it is not open.',
      },
      {
        key: 'accepted-only',
        value: ({ cells, spares, accepted }) => cells + spares - accepted,
        says: () =>
          'Only what is accepted was taken away. What is pledged and what waits is spoken for as well.',
      },
      {
        key: 'pledged-forgotten',
        value: ({ cells, spares, waiting, accepted }) => cells + spares - waiting - accepted,
        says: () => 'What is pledged was left out. Somebody has promised it: it is not open.',
      },
      {
        key: 'waiting-twice',
        value: ({ cells, spares, pledged, waiting, accepted }) =>
          cells + spares - pledged - 2 * waiting - accepted,
        says: () => 'What waits was taken away twice. A motif that is handed in is no longer pledged.',
      },
    ],
    first: () =>
      'How many are wanted, the spare ones among them? Then take away what anybody has spoken for, each motif once.',
  },
});
