/** What is said to somebody who is stuck in the border. */
import { figure, gather, type Answer } from '../../src/chat/answer.ts';
import { count } from '../../src/core/base/reader.ts';
import type { BorderCounted, BorderRounds } from '../../src/core/along/stuck-border.ts';

type Said = Pick<Answer, 'headline' | 'figures' | 'working' | 'data'> & { readonly lines: string[] };

const stitches = (n: number) => count(n, 'stitch', 'stitches');

/** `84 along each width, 101 along each height and 3 in each corner` */
const sideBySide = ({ across, down }: BorderRounds[number], corner: number) =>
  `${across} along each width, ${down} along each height and ${corner} in each corner`;

/** A round as it should be: what a teacher shows, and what somebody counts hers against. */
export const roundWords = (rounds: BorderRounds, round: number, corner: number): string | undefined => {
  const here = rounds[round - 1];
  return here && `Round ${round} of the border has ${stitches(here.stitches)}: ${sideBySide(here, corner)}.`;
};

interface Asked {
  readonly corner: number;
  readonly row: number | undefined;
  readonly words: string | undefined;
}

/** What her counts of rounds tell; the rounds as they should be where she gave none. */
export function ofBorder(
  rounds: BorderRounds,
  found: BorderCounted | undefined,
  { corner, row, words }: Asked,
): Said {
  const all = `Stitches from round 1: ${rounds.map((round) => round.stitches).join(' ')}.`;
  const { wrong } = found ?? {};
  if (found && wrong) {
    const { round, expected, counted, difference, eachCorner } = wrong;
    const manyOrFew = (n: number) => `${Math.abs(n)} too ${n < 0 ? 'few' : 'many'}`;
    const here = rounds[round - 1];
    return {
      headline: `Round ${round} of your border should have ${stitches(expected)}; you counted ${counted}, ${manyOrFew(difference)}.`,
      figures: [
        figure('first_wrong_row', 'First wrong round', round),
        figure('expected', 'Expected', expected),
        figure('counted', 'Counted', counted),
        figure('difference', 'Difference', difference),
      ],
      lines: gather(
        eachCorner === undefined
          ? 'Most likely: Stitches were left out or worked twice along a side, where two motifs meet most often.'
          : `Most likely: Every corner has ${manyOrFew(eachCorner)}: ${corner} belong into the middle stitch of each.`,
        here && `Side by side, to find the place: ${sideBySide(here, corner)}.`,
        all,
      ),
      working: [],
      data: { causes: [wrong.slip] },
    };
  }
  const right =
    found === undefined
      ? undefined
      : found.from === found.last
        ? `Round ${found.last} of your border has the right count`
        : `Rounds ${found.from} to ${found.last} of your border have the right counts`;
  const asked = row === undefined ? undefined : roundWords(rounds, row, corner);
  return {
    headline:
      right === undefined
        ? (asked ??
          (words === undefined
            ? 'It is noted that you are stuck. Say at which round, and what you counted, and you are told what probably happened.'
            : 'It is noted in your words.'))
        : `${right}.`,
    figures: gather(
      row !== undefined && figure('expected', `Count of round ${row}`, rounds[row - 1]?.stitches ?? 0),
    ),
    lines: gather(
      right !== undefined && 'The counts are not what holds you up: say in words what does.',
      all,
      right === undefined &&
        `With what you counted: /along stuck row:${row ?? 1} counts: and the counts up to it.`,
    ),
    working: [],
    data: {},
  };
}
