/** What is put together of several pieces, or of words, in a way of its own. */
import type { Piece } from '../pieces/piece.ts';
import { termIn, termsIn } from '../terms.ts';
import type { Fitting } from './fitting.ts';
import { senseNames } from './slots.ts';

/** A swatch of one measure, “a 4 inch swatch”, is a square one. */
export function fillSquareSwatch(fitting: Fitting): void {
  const { asked, heard, pieces, options } = fitting;
  const [first, second, sense] = asked.pairs?.other ?? [];
  if (first === undefined || second === undefined || sense === undefined || fitting.isFilled(second)) return;
  const one = pieces.find(
    (piece) => fitting.isUsed(piece) && piece.kind === 'length' && piece.text === options[first],
  );
  if (!one) return;
  const next = heard.words[one.to] === '-' ? one.to + 1 : one.to;
  const squared = heard.words[next] === 'square' ? next + 1 : next;
  const isOfSwatch = senseNames(sense)
    .flatMap((name) => heard.present.get(name) ?? [])
    .some(({ from, to }) => from === squared || (squared !== next && to <= one.from && one.from - to <= 3));
  if (!isOfSwatch) return;
  fitting.put(second, one.text);
  fitting.assumed.push(`A ${sense} of ${one.text} is read as square, ${one.text} each way.`);
  fitting.score += 0.6;
}

/** The most rounds of one stitch that are written out. */
const MOST_ROUNDS = 12;

/** Stitches round by round: “2 rounds of sc and one of hdc” is sc sc hdc. */
export function fillRounds(fitting: Fitting): void {
  const { pieces } = fitting;
  const slot = fitting.open('stitches');
  const stitches = pieces.filter(({ kind }) => kind === 'stitch');
  if (!slot || stitches.length === 0) return;
  const countsRounds = ({ kind, nouns }: Piece) => kind === 'count' && nouns.includes('round');
  const ofRounds = pieces.filter(countsRounds);
  // “3 rounds, sc hdc sc”: the number says how many are listed, not how often the first is worked.
  const isTotal = ({ value }: Piece) =>
    stitches.length > 1 && ofRounds.length === 1 && value === stitches.length;
  const listed = stitches.flatMap((stitch) => {
    const before = pieces.filter(({ to }) => to <= stitch.from).at(-1);
    if (!before || !countsRounds(before)) return [stitch.text];
    fitting.use(before);
    const { value: times = 1 } = before;
    const repeats = !isTotal(before) && stitch.from - before.to <= 3 && times <= MOST_ROUNDS;
    return new Array<string>(repeats ? times : 1).fill(stitch.text);
  });
  const uk = listed.every((one) => one.startsWith('UK '));
  fitting.put(slot.name, uk ? `UK ${listed.map((one) => one.slice(3)).join(' ')}` : listed.join(' '));
  fitting.score += 1.5;
  for (const stitch of stitches) fitting.use(stitch);
}

/** A word of the trade that is asked after. */
export function fillTerm(fitting: Fitting): void {
  const slot = fitting.open('term');
  const term = slot && termIn(fitting.heard);
  if (!term) return;
  const several = fitting.heard.present.has('tell-apart') ? termsIn(fitting.heard) : [];
  if (several.length > 1) {
    fitting.put(slot.name, several.map(({ text }) => text).join(', '));
    fitting.score += 3;
    for (const { from, to } of several)
      for (const piece of fitting.pieces) if (piece.from >= from && piece.to <= to) fitting.use(piece);
    return;
  }
  fitting.put(slot.name, term.text);
  fitting.score += 2;
  for (const piece of fitting.pieces) if (piece.from >= term.from && piece.to <= term.to) fitting.use(piece);
}
