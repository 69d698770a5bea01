/** Pledging and giving back. */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import {
  kindNamed,
  pledge as pledgeRule,
  release as releaseRule,
  stillOpen,
} from '../../src/core/group/rules.ts';
import { openFor, type GroupState } from '../../src/core/group/state.ts';
import { count } from '../../src/core/ways.ts';
import { OPENED } from './example.ts';
import { askerOf, doing, kindOption, nameOption, quoted, whichBlanket } from './which.ts';

const motifsOption = opt.whole('How many', { max: 500, example: '2' }).default(1);

/** Buttons for each kind, where a kind has to be chosen: what a board's one button leads to. */
export function chooseKind(
  state: GroupState,
  verb: string,
  question: string,
  left: (kind: number) => number,
): Answer {
  const kinds = state.plan.kinds.flatMap(({ name }, kind) =>
    left(kind) > 0 ? [{ name, left: left(kind) }] : [],
  );
  return {
    headline:
      kinds.length === 0
        ? `There is nothing to ${verb} now.`
        : `Which kind do you ${verb} for ${state.plan.name}?`,
    lines: kinds.map(({ name, left: motifs }) => `${name}: ${motifs}`),
    data: { kinds },
    actions: kinds.slice(0, 20).map(({ name }) => ({
      label: `One ${name}`,
      line: `/together ${question} kind:${quoted(name)} name:${quoted(state.plan.name)}`,
    })),
    private: true,
  };
}

export const pledge = question({
  name: 'pledge',
  says: 'Promise motifs of a kind; they are yours to make and nobody else’s',
  options: { kind: kindOption.optional(), motifs: motifsOption, name: nameOption },
  example: 'kind:furrow motifs:2',
  before: OPENED,
  refused: { line: 'kind:furrow motifs:400', option: 'motifs' },
  changes: true,
  async answer({ kind, motifs, name }, context) {
    const { doc, state } = await whichBlanket(context, name);
    if (kind === undefined) return chooseKind(state, 'pledge', 'pledge', (one) => openFor(state, one));
    const which = kindNamed(state, kind);
    const { state: after, again } = await context.projects.groups.happen(doc.id, doing(context), (now) =>
      pledgeRule(now, askerOf(context), which, motifs),
    );
    const hers = after.pledges.get(context.maker.id)?.[which] ?? 0;
    const called = after.plan.kinds[which]?.name ?? kind;
    return {
      headline: `${again ? 'That was counted already: you' : 'You'} hold ${count(hers, 'pledged motif')} of ${called} in ${after.plan.name}.`,
      figures: [
        { key: 'pledged', label: 'You hold', value: hers, unit: '' },
        { key: 'open', label: 'Still open of it', value: openFor(after, which), unit: '' },
      ],
      lines: [`Still open: ${stillOpen(after)}.`],
      actions: [
        {
          label: 'Hand one in',
          line: `/together handin kind:${quoted(called)} name:${quoted(after.plan.name)}`,
        },
        {
          label: 'Give one back',
          line: `/together release kind:${quoted(called)} name:${quoted(after.plan.name)}`,
        },
      ],
      board: doc.id,
    };
  },
});

export const release = question({
  name: 'release',
  says: 'Give back motifs you pledged and will not make',
  options: { kind: kindOption.optional(), motifs: motifsOption, name: nameOption },
  example: 'kind:furrow',
  before: [...OPENED, '/together pledge kind:furrow motifs:2'],
  refused: { line: 'kind:furrow motifs:9', option: 'motifs' },
  changes: true,
  async answer({ kind, motifs, name }, context) {
    const { doc, state } = await whichBlanket(context, name);
    const hers = (one: number) => state.pledges.get(context.maker.id)?.[one] ?? 0;
    if (kind === undefined) return chooseKind(state, 'give back', 'release', hers);
    const which = kindNamed(state, kind);
    const { state: after } = await context.projects.groups.happen(doc.id, doing(context), (now) =>
      releaseRule(now, context.maker.id, which, motifs),
    );
    const left = after.pledges.get(context.maker.id)?.[which] ?? 0;
    return {
      headline: `Given back; you hold ${count(left, 'pledged motif')} of ${after.plan.kinds[which]?.name ?? kind}.`,
      figures: [{ key: 'pledged', label: 'You hold', value: left, unit: '' }],
      lines: [`Still open: ${stillOpen(after)}.`],
      board: doc.id,
    };
  },
});
