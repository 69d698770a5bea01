/**
 * What to ask next where something is refused: the core and the store know no commands, so their hints name none. By the
 * problem's code, from what it is made of.
 */
import type { Advice } from '../../src/chat/command.ts';
import type { Problem } from '../../src/core/base/problem.ts';
import { lineOf } from './actions.ts';

export const ADVICE: Advice = new Map<string, (facts: Problem['facts']) => string>([
  [
    'motif-size-unknown',
    ({ motif }) => `Measure a finished one: ${lineOf('motif weigh', { name: String(motif), side: '15cm' })}.`,
  ],
  [
    'yarn-at-hand-unknown',
    ({ colour }) =>
      `Say it colour by colour: ${lineOf('blanket colours', { colour: String(colour), ball: '170m/100g', balls: 4 })}.`,
  ],
  ['blanket-closed', () => 'The organiser can open it again with /host reopen.'],
  [
    'organiser-gone',
    ({ server }) =>
      server === 1
        ? 'Its organiser has gone; a manager of the server can hand it to somebody who takes part: /together handover.'
        : 'Its organiser has gone; whoever takes part can take it over with /together handover.',
  ],
  [
    'maker-kept-out',
    ({ maker }) =>
      `Let ${String(maker)} in again first: ${lineOf('host bar', { maker: String(maker), do: 'readmit' })}.`,
  ],
  ['organiser-kept', () => 'Hand the blanket over first: /together handover.'],
  [
    'offered-already',
    () => 'Wait for the answer, ask somebody else, or take the question back with /together undo.',
  ],
  ['not-named', ({ organiser }) => `Ask ${String(organiser)} to name you with /host invite.`],
  ['not-taking-part', () => 'Join with /together join per_week:3.'],
  [
    'teacher-gone',
    ({ server }) =>
      server === 1
        ? 'Its teacher has gone; a manager of the server can hand it to somebody who takes part: /along handover.'
        : 'Its teacher has gone; whoever takes part can take it over with /along handover and her own name.',
  ],
  ['teacher-stays', () => 'Hand it over first with /along handover, or close it with /along close.'],
  ['not-making-along', () => 'Join with /along join; your gauge can come later.'],
  ['along-closed', () => 'The teacher can open it again with /along close do:reopen.'],
  ['no-such-along', () => '/along list shows those there are.'],
  ['part-gone', () => '/along plan shows the parts as they are now.'],
  ['no-parts', () => 'The teacher adds one with /along part do:add.'],
  ['nothing-pledged', () => '/together mine shows what you hold.'],
  ['shares-changed', () => 'Ask /host shares again and look at the new ones.'],
  ['nobody-joined', () => 'Makers join with /together join per_week:3.'],
  ['closing-day-passed', () => 'Move it with /host reopen closes: and a day to come.'],
  [
    'no-blanket-saved',
    () =>
      `Start one with ${lineOf('blanket start', { name: 'garden throw', kinds: 'moss square', columns: 6, rows: 8 })}.`,
  ],
  [
    'no-motif-saved',
    () => `Save one with ${lineOf('motif define', { name: 'moss square', shape: 'diagonal', size: 12 })}.`,
  ],
  ['blanket-name-taken', () => 'Choose another name, or change that one: /blanket layout, /blanket change.'],
  ['too-many-blankets', () => 'Remove one with /blanket remove.'],
  ['too-many-motifs', () => 'Remove one with /motif remove.'],
  [
    'motif-removed-too',
    ({ motif }) => `Bring it back first: ${lineOf('motif undo', { name: String(motif) })}.`,
  ],
  ['too-many-made', () => 'Set the number made with /progress at.'],
  ['nothing-counted', () => 'Say where you are with /progress at row:4.'],
  ['map-uses-kind', () => 'Lay a map without it first: /blanket layout map:…, or arrange:scattered.'],
  ['no-such-group', () => '/together list shows those there are.'],
  ['file-not-ours', () => 'Give a file that /settings export made.'],
  [
    'damaged-document',
    () => 'Whoever runs this may be able to mend it; /settings erase lets you begin anew.',
  ],
  ['nothing-accepted', () => 'Accept what was handed in with /host accept.'],
]);

/** The problem with the hint that names the command to ask next, where there is one. */
export const advised = (problem: Problem): Problem =>
  problem.said(problem.message, ADVICE.get(problem.code)?.(problem.facts) ?? problem.hint);
