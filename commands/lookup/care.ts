/** What has to be taken care of? */
import type { Answer } from '../../src/chat/answer.ts';
import { question } from '../../src/chat/command.ts';
import { opt } from '../../src/chat/options.ts';
import { CARE, CARE_TOPICS, caution, type CareTopic } from '../../src/standards/care.ts';

const LABELS: Readonly<Record<CareTopic, string>> = {
  baby: 'babies',
  hands: 'hands',
  heat: 'heat',
  'small-parts': 'small parts',
  selling: 'selling',
  'dye-lot': 'dye lots',
  'rough-estimate': 'rough estimates',
};

export const care = question({
  name: 'care',
  bare: 'topic',
  says: 'What to take care of: babies, hands, heat, small parts, selling, dye lots, rough estimates',
  options: {
    topic: opt
      .choice(
        'What it is about; everything if left out',
        CARE_TOPICS.map((value) => ({ value, label: LABELS[value] })),
        'baby',
      )
      .optional(),
  },
  example: 'topic:baby',
  refused: { line: 'topic:dragons', option: 'topic' },
  asked: {
    ways: [
      'safe baby',
      'safe blanket baby',
      'safe blanket',
      'safe button',
      'hurt',
      'hurt hand',
      'iron yarn',
      'iron blocked',
      'iron <yarn>',
      'sell blanket',
      'sell rules',
      'dye-lot',
      'dye-lot yarn',
      'button baby',
      'sleep baby',
      'baby sleep blanket',
      'sell motif',
    ],
    also: 'how-to getting safe baby blanket hand button sleep yarn ball rules blocked colour motif iron all pattern how-long stitch why',
    not: 'how-many how-much gauge border',
    marks: {
      topic: {
        choices: {
          'dye-lot': 'dye-lot',
          'small-parts': 'button',
          selling: 'sell',
          hands: 'hurt',
          heat: 'iron',
          baby: 'baby sleep',
        },
        with: 'first',
      },
    },
    phrases: ['is it safe to put a crochet blanket in a cot', 'my hands hurt from crocheting'],
  },
  answer({ topic }): Answer {
    if (topic === undefined)
      return {
        headline: 'Take care of babies, hands, heat, small parts, selling, dye lots and rough estimates.',
        lines: CARE_TOPICS.map(caution),
        data: { topics: CARE_TOPICS },
      };
    const { text, source, more } = CARE[topic];
    return { headline: text, lines: [...more, `Source: ${source}.`], data: { topics: [topic] } };
  },
});
