/** Every hook that an answer names is one that is sold: its size stands in the published table. */
import { expect, it } from 'vitest';
import { registry } from '../commands/index.ts';
import { HOOKS, STEEL_HOOKS } from '../src/standards/hooks.ts';
import { asking } from './asking.ts';

const SOLD = new Set([...HOOKS, ...STEEL_HOOKS].map(({ mm }) => mm));

/** Sizes in mm in a sentence about a hook, and those that stand in a line to type. */
const hooksIn = (said: string): number[] => [
  ...said
    .split(/(?<=[.;])\s|\n/)
    .filter((sentence) => /\bhooks?\b/i.test(sentence))
    .flatMap((sentence) => [...sentence.matchAll(/\b(\d+(?:\.\d+)?) ?mm\b/g)].map(([, mm]) => Number(mm))),
];

it('in every example, and in what every option says', async () => {
  let named = 0;
  for (const { path, question } of registry.routes) {
    const room = asking();
    for (const line of question.before ?? []) await room.ask(line);
    const answer = await room.ask(`/${path} ${question.example}`);
    const said = [
      answer.headline,
      ...(answer.lines ?? []),
      ...answer.assumptions,
      ...answer.cautions,
      question.example.replace(/hook:/g, 'hook '),
    ];
    for (const [key, { value, unit }] of Object.entries(answer.figures))
      if (unit === 'mm' && key.includes('hook')) said.push(`hook ${value} mm`);
    for (const mm of hooksIn(said.join('\n'))) {
      expect(SOLD, `${path}: ${mm} mm`).toContain(mm);
      named++;
    }
  }
  expect(named).toBeGreaterThan(10);
});

it('whatever gauge is asked about', async () => {
  const room = asking();
  for (const have of [9, 12, 14, 17.5, 22])
    for (const hook of ['4mm', '5.1mm', '6.5mm', '9mm']) {
      const answer = await room.ask(`/gauge compare have:${have}x10 want:14x10 hook:${hook}`);
      const own = Number.parseFloat(hook);
      const named = hooksIn(answer.headline.replace(/;/g, ' ')).filter((mm) => mm !== own);
      for (const mm of [...named, answer.figures['suggested_hook']!.value].filter((mm) => mm !== own))
        expect(SOLD, answer.headline).toContain(mm);
    }
});
