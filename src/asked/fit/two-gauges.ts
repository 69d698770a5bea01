/** Two gauges in one phrase: “my gauge is 14x10, the pattern wants 13 and 10”. */
import type { Heard } from '../heard.ts';
import type { Piece } from '../pieces/piece.ts';
import type { Fitting } from './fitting.ts';
import { leads } from './near.ts';
import type { Slot } from './slots.ts';
import { takes } from './takes.ts';

type Two<T> = readonly [T, T];

const both = <T>(listed: readonly T[]): Two<T> | undefined => {
  const [one, other] = listed;
  return one !== undefined && other !== undefined && listed.length === 2 ? [one, other] : undefined;
};

/** The two gauges, in the order in which they are said; undefined where there are not just two. */
function gaugesSaid(pieces: readonly Piece[]): Two<Piece> | undefined {
  const gauges = pieces.filter(({ kind, parts }) =>
    kind === 'counts' ? parts?.length === 2 : kind === 'gauge' || kind === 'pair',
  );
  const [only] = gauges;
  if (!only || gauges.length > 1) return both(gauges);
  // “15 stitches to 10 cm and I need 13”: the other one in stitches alone, where it is the only number left.
  const bare = pieces.filter(
    ({ kind, nouns, must }) =>
      kind === 'count' && must && nouns.every((noun) => noun === 'stitch' || noun === 'increase'),
  );
  const of = Number.parseFloat(only.text);
  const alike = bare.filter(({ value = NaN }) => value >= of / 2 && value <= of * 2);
  return bare.length === 1 ? both([only, ...alike].sort((a, b) => a.from - b.from)) : undefined;
}

/** Where the clause of the second begins. */
function clauseOf({ words }: Heard, first: Piece, second: Piece): number {
  let at = second.from;
  while (at > first.to && !/^(,|;|\.|and|but|while|whereas)$/.test(words[at - 1] ?? '')) at--;
  return at;
}

/** Each gauge with its option: the one of whose words its own clause leads up to it. Undefined where those do not tell them apart. */
function slotsOfClauses(
  heard: Heard,
  [first, second]: Two<Piece>,
  [one, other]: Two<Slot>,
): Two<Slot> | undefined {
  const says = (slot: Slot, from: number, piece: Piece) =>
    slot.near.some((sense) =>
      heard.present.get(sense)?.some((said) => said.to > from && said.to <= piece.from),
    );
  const slotOf = (from: number, piece: Piece): Slot | undefined => {
    const led = [one, other].filter(({ mark }) => piece.kind === 'count' && leads(heard, piece, mark.lead));
    if (led.length === 1) return led[0];
    if (says(one, from, piece) === says(other, from, piece)) return undefined;
    return says(one, from, piece) ? one : other;
  };
  const ofSecond = slotOf(clauseOf(heard, first, second), second);
  let ofFirst = slotOf(0, first);
  // “18 over 4 inches, need 16”: what nothing leads up to is the other one.
  if (!ofFirst && ofSecond && !says(one, 0, first) && !says(other, 0, first))
    ofFirst = ofSecond === one ? other : one;
  return ofFirst && ofSecond && ofFirst !== ofSecond ? [ofFirst, ofSecond] : undefined;
}

export function fillTwoGauges(fitting: Fitting): void {
  const { heard, pieces } = fitting;
  const slots = both(fitting.slots.filter((slot) => slot.takes === 'gauge'));
  const gauges = slots && gaugesSaid(pieces);
  const belongs = gauges && slotsOfClauses(heard, gauges, slots);
  if (!belongs) return;
  // “16 and 20 over 4 inches, I get 18 and 22”: over the same length, where it is said of one.
  const over = gauges.flatMap(({ text }) => / over .+$/.exec(text)?.[0] ?? [])[0] ?? '';
  gauges.forEach((piece, index) => {
    const slot = belongs[index];
    const taken = slot && takes(slot, piece, heard);
    if (!taken || fitting.isFilled(slot.name) || fitting.isUsed(piece)) return;
    fitting.put(slot.name, taken.text.includes(' over ') ? taken.text : `${taken.text}${over}`);
    fitting.use(piece);
    fitting.score += 1.6;
  });
}
