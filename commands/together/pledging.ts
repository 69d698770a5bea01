/** Pledging and giving back. */
import { figure, gather, type Action, type Answer, type Menu } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import * as rules from '../../src/core/group/rules.ts';
import { openFor, type GroupState } from '../../src/core/group/state.ts';
import { count, num } from '../../src/core/base/reader.ts';
import { pledgedOf } from '../../src/core/group/totals.ts';
import { action, form } from '../shared/actions.ts';
import { OPENED } from './example.ts';
import { askerOf, doing } from '../shared/which-kept.ts';
import { kindOption, nameOption, whichBlanket } from './which.ts';

/** Motifs of one kind in one asking. */
const MOST_AT_ONCE = 500;

export const motifsOption = opt
  .wholeOrAll(
    { says: 'How many; all of that kind are meant by all', assumed: 'One motif, as no number was given.' },
    { max: MOST_AT_ONCE, example: '2' },
  )
  .default(1);

/** How many are meant: `all` is as many as there are of the kind. */
export const manyOf = (motifs: number | 'all', left = MOST_AT_ONCE): number =>
  motifs !== 'all' ? motifs : left > 0 ? left : 1;

/** How many buttons one answer has room for. */
const MOST_BUTTONS = 20;
/** So many buttons are looked over at a glance. */
const MOST_AT_A_GLANCE = 5;

/** Buttons for each kind, where a kind has to be chosen: what a board's one button leads to. */
export function chooseKind(
  state: GroupState,
  {
    verb,
    typed,
    motifs,
    left,
    ask,
  }: {
    /** What is done with a kind: `pledge`. */
    verb: string;
    /** How the question is typed. */
    typed: string;
    motifs: number;
    /** How many of a kind there are to choose. */
    left: (kind: number) => number;
    /** The button for one kind. */
    ask: (label: string, options: { kind: string; motifs: number | undefined; name: string }) => Action;
  },
): Answer {
  const kinds = state.plan.kinds.flatMap(({ name }, kind) =>
    left(kind) > 0 ? [{ name, left: left(kind) }] : [],
  );
  // Few kinds have a button each; of more, one is chosen in a menu.
  const one =
    motifs === 1 && kinds.length > MOST_AT_A_GLANCE ? menuOfKinds(verb, kinds, ask, state) : undefined;
  return {
    headline:
      kinds.length === 0
        ? `There is nothing to ${verb} now.`
        : `Which kind do you ${verb} for ${state.plan.name}?`,
    lines: gather(
      kinds.map(({ name, left: some }) => `${name}: ${some}`),
      kinds.length > MOST_BUTTONS && `The kinds without a button are typed: ${typed} kind:…`,
    ),
    data: { kinds },
    ...(one === undefined ? {} : { menu: one }),
    actions: (one === undefined ? kinds : []).slice(0, MOST_BUTTONS).map(({ name, left: some }) => {
      const many = motifs < some ? motifs : some;
      return ask(`${many === 1 ? 'One' : num(many)} ${name}`, {
        kind: name,
        motifs: many === 1 ? undefined : many,
        name: state.plan.name,
      });
    }),
    private: true,
  };
}

/** A menu of kinds: what is chosen in it is asked for one motif. */
function menuOfKinds(
  verb: string,
  kinds: readonly { readonly name: string; readonly left: number }[],
  ask: (label: string, options: { kind: string; motifs: number | undefined; name: string }) => Action,
  { plan }: GroupState,
): Menu {
  const says = `Which kind to ${verb}, one of it`;
  const { question, options } = ask(says, { kind: '', motifs: undefined, name: plan.name });
  return {
    question,
    options: Object.fromEntries(Object.entries(options).filter(([name]) => name !== 'kind')),
    option: 'kind',
    says,
    single: true,
    choices: kinds.map(({ name, left }) => ({ value: name, label: `${name}: ${num(left)}` })),
  };
}

/** The kind that is meant where none is named: the only one of which there is something. */
export function onlyKind(state: GroupState, left: (kind: number) => number): string | undefined {
  const kinds = state.plan.kinds.filter((_, kind) => left(kind) > 0);
  return kinds.length === 1 ? kinds[0]?.name : undefined;
}

export const pledge = question({
  name: 'pledge',
  says: 'Promise motifs of a kind; they are yours to make and nobody else’s',
  options: { kind: kindOption.optional(), motifs: motifsOption, name: nameOption },
  example: 'kind:furrow motifs:2',
  before: OPENED,
  refused: { line: 'kind:furrow motifs:400', option: 'motifs' },
  changes: true,
  asked: {
    ways: ['claim @kind', 'claim motif', 'claim <count>', 'claim @kind motif'],
    also: 'motif claim group kind need each',
    not: 'left open-for which give-back still hand-in how-much yarn row weigh per-week where where-am-i how-many saved',
    reports: true,
    saved: 'group',
    marks: {
      kind: { takes: 'saved-kind' },
      motifs: { takes: 'count', nouns: 'motif block kind', loose: true },
      name: { takes: 'saved-group' },
    },
    needs: [['kind']],
    phrases: ['I will make 4 furrow squares', 'put me down for two trellis'],
  },
  async answer({ kind, motifs, name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    const left = (one: number) => openFor(state, one);
    const meant = kind ?? onlyKind(state, left);
    if (meant === undefined)
      return chooseKind(state, {
        verb: 'pledge',
        typed: '/together pledge',
        motifs: manyOf(motifs),
        left,
        ask: (label, options) => action(label, 'together pledge', options),
      });
    const which = rules.findKindNamed(state, meant);
    const { state: after, again } = await context.projects.groups.happen(doc.id, doing(context), (now) =>
      rules.pledge(now, askerOf(context), which, manyOf(motifs, left(which))),
    );
    const hers = pledgedOf(after, context.maker.id, which);
    const called = after.plan.kinds[which]?.name ?? meant;
    return {
      headline: `${again ? 'That was counted already: you' : 'You'} hold ${count(hers, 'pledged motif')} of ${called} in ${after.plan.name}.`,
      figures: [
        figure('pledged', 'You hold', hers),
        figure('open', 'Still open of it', openFor(after, which)),
      ],
      lines: [`Still open: ${rules.stillOpen(after)}.`],
      actions: [
        form('Hand in', 'together handin', { kind: called, name: after.plan.name }, []),
        action('Give one back', 'together giveback', { kind: called, name: after.plan.name }),
      ],
      board: doc.id,
    };
  },
});

export const giveback = question({
  name: 'giveback',
  says: 'Give back motifs you pledged and will not make',
  options: { kind: kindOption.optional(), motifs: motifsOption, name: nameOption },
  example: 'kind:furrow',
  before: [...OPENED, '/together pledge kind:furrow motifs:2'],
  refused: { line: 'kind:furrow motifs:9', option: 'motifs' },
  changes: true,
  asked: {
    ways: ['give-back @kind', 'give-back motif', 'give-back claim'],
    also: 'motif claim group mine kind left done',
    not: 'how-many row hand-in show new picture undo',
    reports: true,
    saved: 'group',
    marks: {
      kind: { takes: 'saved-kind' },
      motifs: { takes: 'count', nouns: 'motif block kind', loose: true },
      name: { takes: 'saved-group' },
    },
    phrases: ["I can't make 2 of my furrow squares after all", 'give back 2 furrow squares'],
  },
  async answer({ kind, motifs, name }, context): Promise<Answer> {
    const { doc, state } = await whichBlanket(context, name);
    const hers = (one: number) => pledgedOf(state, context.maker.id, one);
    const meant = kind ?? onlyKind(state, hers);
    if (meant === undefined)
      return chooseKind(state, {
        verb: 'give back',
        typed: '/together giveback',
        motifs: manyOf(motifs),
        left: hers,
        ask: (label, options) => action(label, 'together giveback', options),
      });
    const which = rules.findKindNamed(state, meant);
    const { state: after, again } = await context.projects.groups.happen(doc.id, doing(context), (now) =>
      rules.giveBack(now, context.maker.id, which, manyOf(motifs, hers(which))),
    );
    const left = pledgedOf(after, context.maker.id, which);
    return {
      headline: `${again ? 'That was counted already: you hold' : 'Given back; you hold'} ${count(left, 'pledged motif')} of ${after.plan.kinds[which]?.name ?? meant}.`,
      figures: [figure('pledged', 'You hold', left)],
      lines: [`Still open: ${rules.stillOpen(after)}.`],
      board: doc.id,
    };
  },
});
