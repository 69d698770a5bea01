/** What options take of the words themselves: what is read off them, names of what is saved, choices. */
import type { Fitting } from './fitting.ts';
import { senseNames, type Slot } from './slots.ts';

/** Reads the value of an option off the phrase as it stands; what lay in it is used. */
function capture(fitting: Fitting, slot: Slot): void {
  const { phrase, pieces, tokens } = fitting.heard;
  const match = slot.mark.capture?.exec(phrase);
  const [, ...groups]: (string | undefined)[] = match ?? [];
  const value = groups.find((group) => group !== undefined)?.trim();
  if (!match || value === undefined || value === '') return;
  fitting.put(slot.name, value.replace(/^["“”'‘’]|["“”'‘’]$/g, ''));
  fitting.score += 1;
  const from = match.index;
  const to = from + match[0].length;
  for (const piece of pieces)
    if ((tokens[piece.from]?.from ?? 0) >= from && (tokens[piece.to - 1]?.to ?? 0) <= to) fitting.use(piece);
}

/** “no border”, “note: for the raffle”: options that say how they are read off. */
export function fillFromWords(fitting: Fitting): void {
  for (const slot of fitting.slots)
    if (slot.mark.none?.test(fitting.heard.phrase)) fitting.put(slot.name, '0');
    else capture(fitting, slot);
}

/** Names of what is saved, each to the option that takes such a name; several only where one takes several. */
export function fillNames(fitting: Fitting): void {
  const { heard, slots } = fitting;
  const bySlot = new Map<Slot, string[]>();
  const placed: { readonly from: number; readonly to: number }[] = [];
  for (const { known, from, to } of heard.names) {
    const slot = slots.find(({ takes, name }) => takes === `saved-${known.of}` && !fitting.isFilled(name));
    if (!slot) continue;
    const listed = bySlot.get(slot) ?? [];
    if (!listed.includes(known.name)) listed.push(known.name);
    bySlot.set(slot, listed);
    placed.push({ from, to });
  }
  fitting.unnamed += heard.names.filter(
    ({ from, to }) => !placed.some((one) => one.from < to && from < one.to),
  ).length;
  for (const [{ name, mark }, listed] of bySlot)
    if (mark.with === 'several' || listed.length === 1) {
      fitting.put(name, listed.join(', '));
      fitting.score += 1;
    } else fitting.unnamed += listed.length;
}

/** The choices of an option that are said: by the words that mean them, or else by their own names. */
function choicesSaid({ heard }: Fitting, { choices, meta }: Slot): readonly { readonly value: string }[] {
  const lower = ` ${heard.words.join(' ')} `;
  const says = (word: string) => lower.includes(` ${word} `);
  const meant = choices.filter(
    ({ senses, words }) => senses.some((sense) => heard.present.has(sense)) || words.some(says),
  );
  if (meant.length > 0 || choices.length > 0) return meant;
  return (meta?.choices ?? []).filter(({ value, label }) =>
    [value, value.replaceAll('-', ' '), label ?? value].some((form) => says(form.toLowerCase())),
  );
}

export function fillChoices(fitting: Fitting): void {
  for (const slot of fitting.slots) {
    const { name, takes, mark } = slot;
    if (fitting.isFilled(name) || (takes !== 'choice' && slot.choices.length === 0)) continue;
    const needed = mark.with === undefined || mark.with === 'first' ? [] : senseNames(mark.with);
    if (needed.length > 0 && !needed.some((sense) => fitting.heard.present.has(sense))) continue;
    const said = choicesSaid(fitting, slot);
    const [first] = said;
    if (!first || (said.length > 1 && mark.with !== 'first')) continue;
    fitting.put(name, first.value);
    fitting.score += 1;
  }
}
