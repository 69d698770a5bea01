/** A command for tests alone: slow, long, hostile or failing on demand, and one that counts durably. */
import { command, question } from '../../../src/chat/command.ts';
import { opt } from '../../../src/chat/options.ts';
import { formula, Working } from '../../../src/core/base/working.ts';
import type { Projects } from '../../../src/projects/projects.ts';

/** What is waited for by `/probe slow`, by its name; a test opens the gate. */
export const gates = new Map<string, Promise<unknown>>();

const ADD = formula({
  label: 'stitches so far',
  formula: 'before + row',
  given: { before: '', row: '' },
  unit: '',
  source: 'derived: the sum of what is counted',
});

const slow = question({
  name: 'slow',
  says: 'Answers when its gate opens',
  options: {
    gate: opt.text('Which', { example: 'none' }),
    alone: opt.yesno('Turns out to be private').default(false),
  },
  example: 'gate:none',
  refused: { line: '', option: 'gate' },
  async answer({ gate, alone }) {
    await gates.get(gate);
    return { headline: `The gate ${gate} is open.`, private: alone };
  },
});

const long = question({
  name: 'long',
  says: 'A long answer',
  options: {
    lines: opt.whole('Lines', { min: 0, max: 1000 }).default(0),
    steps: opt.whole('Steps of working', { min: 0, max: 500 }).default(0),
    actions: opt.whole('Buttons', { min: 0, max: 60 }).default(0),
    files: opt.whole('Files', { min: 0, max: 30 }).default(0),
  },
  example: 'lines:10',
  refused: { line: 'lines:1001', option: 'lines' },
  answer({ lines, steps, actions, files }) {
    const working = new Working();
    let sum = 0;
    for (let row = 1; row <= steps; row++) sum = working.do(ADD, { before: sum, row });
    const times = (n: number) => Array.from({ length: n }, (_, index) => index + 1);
    return {
      headline: `Here are ${lines} lines and ${steps} steps.`,
      lines: times(lines).map(
        (n) => `Line ${n}: work across, turn, and count what is on the hook before going on.`,
      ),
      figures: times(Math.min(lines, 60)).map((n) => ({
        key: `f${n}`,
        label: `Figure ${n}`,
        value: n,
        unit: '' as const,
      })),
      cautions: times(Math.min(lines, 30)).map(
        (n) => `Caution ${n}: mind your hands, rest them, and sit well.`,
      ),
      assumptions: times(Math.min(lines, 30)).map((n) => `Assumption ${n}: nothing else was said.`),
      working: working.steps,
      actions: times(actions).map((n) => ({
        label: `Lines ${n}`,
        question: 'probe long',
        options: { lines: String(n) },
      })),
      files: times(files).map((n) => ({
        name: `file-${n}.txt`,
        says: `File ${n}`,
        content: `content ${n}\n`.repeat(50),
      })),
    };
  },
});

/** Whatever a person might put into a name. */
export const HOSTILE =
  '@everyone <@123456789012345678> <@&123456789012345678> **b** _i_ ~~s~~ ||x|| `c` ```\nblock``` [here](https://example.org/) ' +
  'https://example.org/a_b_c discord.gg/abc <https://example.org> # head > quote -# small 1. one \u202Eevil\u200B :smile: <:x:123456789012345678> <t:0:R>';

const echo = question({
  name: 'echo',
  says: 'Says what was said',
  options: { text: opt.text('What', { max: 1500, example: 'moss' }) },
  example: 'text:moss',
  refused: { line: '', option: 'text' },
  answer: ({ text }) => ({
    headline: `You said ${text}.`,
    lines: [text, `# ${text}`],
    figures: [{ key: 'one', label: text, value: 1, unit: '' }],
    assumptions: [text],
    cautions: [text],
    actions: [{ label: text, question: 'probe long', options: {} }],
    files: [{ name: `${text}.txt`, says: text, content: text }],
  }),
});

const broken = question({
  name: 'broken',
  says: 'Fails',
  options: {},
  example: '',
  refused: { line: 'any:1', option: 'any' },
  answer() {
    throw new Error('a fault inside: secret-of-the-inside');
  },
});

/** Where the probe counts: progress with a motif of this name. */
const COUNTED = 'probe';
export const counted = async (projects: Projects, id: string) =>
  (await projects.maker(id, 'x')).progress.find(({ motif }) => motif === COUNTED)?.row ?? 0;

const count = question({
  name: 'count',
  says: 'Counts one more, durably',
  options: {},
  example: '',
  refused: { line: 'any:1', option: 'any' },
  changes: true,
  async answer(_, { maker, projects, once }) {
    const { tell } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
      const kept = doc.progress.find(({ motif }) => motif === COUNTED);
      const row = (kept?.row ?? 0) + 1;
      doc.progress = [
        ...doc.progress.filter((one) => one !== kept),
        { motif: COUNTED, row, made: 0, history: [] },
      ];
      return { row };
    });
    return {
      headline: `Counted ${tell.row}.`,
      actions: [{ label: 'One more', question: 'probe count', options: {} }],
    };
  },
});

const where = question({
  name: 'where',
  says: 'Says where it was asked',
  options: {},
  example: '',
  refused: { line: 'any:1', option: 'any' },
  answer: (_, { place }) => ({
    headline: `manager: ${place.manager ? 'yes' : 'no'}, server: ${place.server ?? 'none'}.`,
    actions: [{ label: 'And now', question: 'probe where', options: {} }],
  }),
});

export const probe = command({
  name: 'probe',
  says: 'For tests alone',
  questions: [slow, long, echo, broken, count, where],
});
