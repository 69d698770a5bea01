/** Units, terms, and who sees the answers, set. */
import { gather, type Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { defined } from '../../src/core/base/defined.ts';
import { Problem } from '../../src/core/base/problem.ts';
import { settingsWords } from './words.ts';

const METRIC = ['cm', 'centimetres', 'centimeters', 'metres', 'meters', 'm', 'mm', 'grams', 'g'];
const IMPERIAL = ['inches', 'inch', 'in', 'feet', 'yards', 'yd', 'oz', 'ounces', 'us units'];

export const change = question({
  name: 'change',
  says: 'Sets your units, your terms, or who sees your answers',
  options: {
    units: opt
      .choice(
        'Centimetres, metres and grams, or inches, yards and ounces',
        [
          { value: 'metric', label: 'metric (cm, m, g)', also: METRIC },
          { value: 'imperial', label: 'imperial (in, yd, oz)', also: IMPERIAL },
        ],
        'imperial',
      )
      .optional(),
    terms: opt
      .choice(
        'Whose names of stitches you read and type',
        [
          { value: 'US', also: ['american', 'usa', 'america', 'us terms', 'american terms'] },
          { value: 'UK', also: ['british', 'english', 'britain', 'gb', 'uk terms', 'british terms'] },
        ],
        'UK',
      )
      .optional(),
    answers: opt
      .choice(
        'Who sees answers to you in a server',
        [
          { value: 'everyone', label: 'everyone', also: ['all', 'everybody', 'public'] },
          { value: 'me', label: 'only me', also: ['private', 'just me', 'myself'] },
          { value: 'usual', label: 'as is usual there', also: ['default', 'normal'] },
        ],
        'me',
      )
      .optional(),
    tell: opt
      .choice(
        'How you hear of what concerns you in a group blanket, at most once a day',
        [
          { value: 'here', label: 'by a mention in its channel' },
          { value: 'privately', label: 'by a direct message', also: ['dm', 'private', 'direct'] },
          { value: 'not', label: 'not at all', also: ['no', 'never', 'off'] },
        ],
        'privately',
      )
      .optional(),
    hand: opt
      .choice(
        'The hand that holds your hook: charts and directions are mirrored for the left',
        [
          { value: 'right', label: 'right', also: ['right-handed', 'righthanded', 'r'] },
          { value: 'left', label: 'left', also: ['left-handed', 'lefthanded', 'l'] },
        ],
        'left',
      )
      .optional(),
  },
  example: 'units:imperial terms:UK',
  refused: { line: 'units:cubits', option: 'units' },
  changes: true,
  private: true,
  asked: {
    ways: [
      'change units',
      'choose units',
      'show units',
      'change terms',
      'choose terms',
      'show terms',
      'uk terms',
      'us terms',
      'private answers',
      'public answers',
      'private',
      'show imperial|metric',
      'choose imperial|metric',
      'need imperial|metric',
      'public',
      'units mine',
    ],
    also: 'units imperial metric terms uk us private public answers mine show change choose substitute all settings stitch yarn group where which convert',
    not: 'how-many how-much hook motif blanket mean gauge border <length> ball weigh each row round <stitch>',
    reports: true,
    marks: {
      units: { choices: { imperial: 'imperial', metric: 'metric' }, with: 'first' },
      terms: { choices: { UK: 'uk', US: 'us' } },
      answers: { choices: { me: 'private', everyone: 'public' } },
      tell: { never: true },
      hand: { never: true },
    },
    needs: [['units', 'terms', 'answers']],
    phrases: ['switch me to inches', 'use UK terms', 'make my answers private'],
  },
  async answer({ units, terms, answers, tell, hand }, { maker, projects }): Promise<Answer> {
    if ((units ?? terms ?? answers ?? tell ?? hand) === undefined) {
      throw new Problem('no-change', 'Nothing to change is named.', {
        option: 'units',
        hint: 'Give units, terms, answers, tell or hand: /settings change units:imperial.',
      });
    }
    const settings = await projects.changeMaker(maker.id, maker.name, (doc) => {
      const { answers: before, ...others } = doc.settings;
      doc.settings = {
        ...others,
        ...defined({
          units,
          terms,
          tell,
          hand,
          answers: answers === 'usual' ? undefined : (answers ?? before),
        }),
      };
      return doc.settings;
    });
    return {
      headline: `From now on: ${settingsWords(settings)}.`,
      lines: gather(answers === 'usual' && 'Who sees your answers goes by the place again.'),
      data: { settings },
      private: true,
    };
  },
});
