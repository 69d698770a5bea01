/** What each maker could take of what is still open, worked out from what she said when she joined. */
import { defined } from '../base/defined.ts';
import { Problem } from '../base/problem.ts';
import { when } from '../base/reader.ts';
import { formula, type Working } from '../base/working.ts';
import { MS_PER_DAY } from './rules.ts';
import { shareOut } from './shares.ts';
import { openFor, type GroupState } from './state.ts';

export const CAN_MAKE = formula({
  label: 'Motifs she can make by the day',
  formula: 'a_week * days_left / days_a_week',
  given: { a_week: '', days_left: '', days_a_week: '' },
  unit: '',
  source: 'derived: motifs a week, times the weeks left',
});

/** Where no closing day was set, shares are worked out for so many days. */
const USUAL_DAYS = 28;

export interface Proposal {
  readonly shares: readonly {
    readonly maker: string;
    readonly name: string;
    readonly motifs: readonly number[];
    /** Motifs she can make by the day, and those she holds already. */
    readonly capacity: number;
    readonly held: number;
  }[];
  readonly unplaced: readonly number[];
  /** Differs when the shares do: what is applied can be held to what was shown. */
  readonly mark: number;
  /** Days that the shares are worked out for, where no closing day is set. */
  readonly usualDays?: number;
}

/** Days from a moment to the end of a closing day, in UTC; negative once it has passed. */
export const countDaysUntil = (closes: string, now: Date): number =>
  (Date.parse(`${closes}T23:59:59.999Z`) - now.getTime()) / MS_PER_DAY;

/**
 * A fair split of what is open: the quota, and the spares too where `withSpares`.
 *
 * Throws Problem: nobody-joined, closing-day-passed.
 */
export function proposeShares(state: GroupState, now: Date, withSpares: boolean, working: Working): Proposal {
  const members = [...state.members.values()];
  if (members.length === 0) {
    throw new Problem('nobody-joined', 'Nobody has joined yet.', {
      hint: 'Makers have to join first.',
    });
  }
  const days = state.closes === undefined ? USUAL_DAYS : countDaysUntil(state.closes, now);
  if (days <= 0) {
    throw new Problem('closing-day-passed', `The closing day, ${when(state.closes ?? '')}, has passed.`, {
      hint: 'Move it to a day to come.',
      facts: { closes: state.closes ?? '' },
    });
  }
  const open = state.plan.kinds.map(({ spares }, kind) =>
    Math.max(0, openFor(state, kind) - (withSpares ? 0 : spares)),
  );
  const sharers = members.map(({ maker, name, perWeek, colours }) => {
    const has = new Set(colours.map((colour) => colour.toLowerCase()));
    return {
      maker,
      capacity: working.do(
        CAN_MAKE,
        { a_week: perWeek, days_left: days, days_a_week: 7 },
        `Motifs that ${name} can make by the day`,
      ),
      held: (state.pledges.get(maker) ?? []).reduce((sum, motifs) => sum + motifs, 0),
      can: state.plan.kinds.map(
        ({ runs }) => has.size === 0 || runs.every(({ colour }) => has.has(colour.toLowerCase())),
      ),
    };
  });
  const { motifs, unplaced } = shareOut(open, sharers);
  const said = members.map(({ maker }, index) => `${maker} ${(motifs[index] ?? []).join(' ')}`).join('/');
  return defined({
    shares: members.map(({ maker, name }, index) => ({
      maker,
      name,
      motifs: motifs[index] ?? [],
      capacity: sharers[index]?.capacity ?? 0,
      held: sharers[index]?.held ?? 0,
    })),
    unplaced,
    mark: markOf(said),
    usualDays: state.closes === undefined ? USUAL_DAYS : undefined,
  });
}

/** A number below a thousand million, the same for the same text. */
const markOf = (text: string) =>
  [...text].reduce((mark, letter) => (mark * 31 + (letter.codePointAt(0) ?? 0)) % 999_999_937, 7);
