/** Who holds what: one's own, everybody's for the posting day, and the yarn for it. */
import { question } from '../../src/chat/command.ts';
import { openFor, type GroupState } from '../../src/core/group/state.ts';
import { groupYarn } from '../../src/core/group/yarn.ts';
import { count, m, num } from '../../src/core/ways.ts';
import { caution } from '../../src/standards/care.ts';
import { OPENED } from './example.ts';
import { nameOption, quoted, whichBlanket } from './which.ts';

const PLEDGED = [...OPENED, '/together pledge kind:furrow motifs:2', 'rowan: /together pledge kind:trellis'];

/** By kind, what a maker holds, has handed in, has had accepted. */
function holdings(state: GroupState, maker: string) {
  return state.plan.kinds.map(({ name }, kind) => {
    const pieces = state.pieces.filter((piece) => piece.maker === maker && piece.kind === kind);
    const numbers = (which: string) =>
      pieces.filter((piece) => piece.state === which).map(({ piece }) => piece);
    return {
      kind: name,
      pledged: state.pledges.get(maker)?.[kind] ?? 0,
      handedIn: numbers('handed-in'),
      accepted: numbers('accepted'),
      returned: pieces.filter((piece) => piece.state === 'returned'),
    };
  });
}

export const mine = question({
  name: 'mine',
  says: 'What you hold: pledged, handed in, accepted, sent back',
  options: { name: nameOption },
  example: '',
  before: PLEDGED,
  refused: { line: 'name:"No such blanket"', option: 'name' },
  private: true,
  async answer({ name }, context) {
    const { state } = await whichBlanket(context, name);
    const hers = holdings(state, context.maker.id);
    const sum = (of: (one: (typeof hers)[number]) => number) => hers.reduce((all, one) => all + of(one), 0);
    const pledged = sum((one) => one.pledged);
    const called = quoted(state.plan.name);
    return {
      headline: `For ${state.plan.name} you hold ${count(pledged, 'pledge')}; ${num(sum((one) => one.handedIn.length))} of yours wait and ${num(sum((one) => one.accepted.length))} are in.`,
      figures: [
        { key: 'pledged', label: 'Pledged', value: pledged, unit: '' },
        { key: 'handed_in', label: 'Handed in, waiting', value: sum((one) => one.handedIn.length), unit: '' },
        { key: 'accepted', label: 'Accepted', value: sum((one) => one.accepted.length), unit: '' },
      ],
      lines: hers.flatMap(({ kind, pledged: held, handedIn, accepted, returned }) => [
        ...(held > 0 ? [`${kind}: ${held} to make`] : []),
        ...(handedIn.length > 0 ? [`${kind}: waiting ${handedIn.map((n) => `#${n}`).join(' ')}`] : []),
        ...(accepted.length > 0 ? [`${kind}: accepted ${accepted.map((n) => `#${n}`).join(' ')}`] : []),
        ...returned.slice(-3).map(({ piece, reason }) => `${kind}: #${piece} came back: ${reason ?? ''}`),
      ]),
      data: {
        kinds: hers.map(({ returned, ...rest }) => ({
          ...rest,
          returned: returned.map(({ piece }) => piece),
        })),
      },
      actions: hers
        .filter(({ pledged: held }) => held > 0)
        .slice(0, 10)
        .flatMap(({ kind }) => [
          { label: `Hand in a ${kind}`, line: `/together handin kind:${quoted(kind)} name:${called}` },
          { label: `Give back a ${kind}`, line: `/together release kind:${quoted(kind)} name:${called}` },
        ]),
    };
  },
});

/** A field of a comma-separated file (RFC 4180); one that a spreadsheet would take for a formula is made text. */
const field = (text: string | number) => {
  const safe = /^[=+\-@\t\r]/.test(String(text)) && typeof text === 'string' ? `'${text}` : String(text);
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
};

export const parcels = question({
  name: 'parcels',
  says: 'Who holds what and what has arrived: a list for posting day, and as a CSV file',
  options: { name: nameOption },
  example: '',
  before: PLEDGED,
  refused: { line: 'name:"No such blanket"', option: 'name' },
  async answer({ name }, context) {
    const { state } = await whichBlanket(context, name);
    const makers = [...state.names.keys()].flatMap((maker) => {
      const held = holdings(state, maker).filter(
        (one) => one.pledged + one.handedIn.length + one.accepted.length > 0,
      );
      return held.length === 0 ? [] : [{ name: state.names.get(maker) ?? '', held }];
    });
    const waiting = state.tally.reduce((sum, tally) => sum + tally.handedIn, 0);
    const rows = makers.flatMap(({ name: maker, held }) =>
      held.map((one) => [
        maker,
        one.kind,
        one.pledged,
        one.handedIn.length,
        one.accepted.length,
        [...one.handedIn, ...one.accepted].map((n) => `#${n}`).join(' '),
      ]),
    );
    const csv = [['maker', 'kind', 'to make', 'handed in', 'accepted', 'numbers'], ...rows]
      .map((row) => row.map(field).join(','))
      .join('\r\n');
    return {
      headline: `${count(makers.length, 'maker')} hold or sent motifs of ${state.plan.name}; ${count(waiting, 'motif')} ${waiting === 1 ? 'is' : 'are'} on the way or waiting to be accepted.`,
      lines: makers.map(
        ({ name: maker, held }) =>
          `${maker}: ${held
            .map((one) =>
              [
                one.kind,
                ...(one.pledged > 0 ? [`${one.pledged} to make`] : []),
                ...(one.handedIn.length > 0
                  ? [`${one.handedIn.map((n) => `#${n}`).join(' ')} handed in`]
                  : []),
                ...(one.accepted.length > 0 ? [`${one.accepted.length} accepted`] : []),
              ].join(' '),
            )
            .join('; ')}`,
      ),
      data: {
        makers: makers.map(({ name: maker, held }) => ({
          maker,
          held: held.map(({ returned: _, ...rest }) => rest),
        })),
      },
      files: [
        {
          name: 'parcels.csv',
          says: `Who holds what of ${state.plan.name}, for a spreadsheet`,
          content: `${csv}\r\n`,
        },
      ],
    };
  },
});

export const yarn = question({
  name: 'yarn',
  says: 'Shopping lists: your pledges, and the whole group’s, bought by each or together',
  options: { name: nameOption },
  example: '',
  before: PLEDGED,
  refused: { line: 'name:"No such blanket"', option: 'name' },
  async answer({ name }, context) {
    const { state } = await whichBlanket(context, name);
    const found = groupYarn(state, context.maker.id);
    const need = ({ colour, metres, balls }: { colour: string; metres: number; balls?: number }) =>
      `${colour}: ${m(metres)}${balls === undefined ? '' : `, ${count(balls, 'ball')}`}`;
    const all = state.plan.kinds.reduce((sum, _, kind) => sum + openFor(state, kind), 0);
    return {
      headline:
        found.mine.length === 0
          ? `You hold no pledge of ${state.plan.name}; all that is pledged takes ${found.each === undefined ? m(found.metres) : `${count(found.each, 'ball')} bought by each, ${count(found.together ?? 0, 'ball')} bought together`}.`
          : `For what you pledged: ${found.mine.map(need).join('; ')}.`,
      figures: [
        { key: 'yarn_total', label: 'Yarn for all pledges', value: found.metres, unit: 'm' },
        ...(found.each === undefined
          ? []
          : [
              { key: 'balls_each', label: 'Balls, bought by each', value: found.each, unit: '' as const },
              {
                key: 'balls_together',
                label: 'Balls, bought together',
                value: found.together ?? 0,
                unit: '' as const,
              },
            ]),
      ],
      lines: [
        ...found.together_by_colour.map((one) => `Together, ${need(one)}`),
        ...found.makers.map(({ name: maker, needs }) => `${maker}: ${needs.map(need).join('; ')}`),
        ...(all > 0 ? [`${count(all, 'motif')} still open are not counted.`] : []),
      ],
      working: found.working.steps,
      assumptions: found.assumptions,
      cautions: [caution('dye-lot')],
      data: { mine: found.mine, makers: found.makers, together: found.together_by_colour },
    };
  },
});
