/** What newcomers type at help, and lines whose words stand without a name. */
import { describe, expect, it } from 'vitest';
import { registry } from '../../commands/index.ts';
import { TOPICS } from '../../commands/help/topics.ts';
import { asking } from '../asking.ts';

const room = asking();

describe('/help', () => {
  it('begins with topics and fits a screen', async () => {
    for (const line of ['/help', '?', '/help ?']) {
      const text = await room.text(line);
      expect(text.split('\n').length, line).toBeLessThanOrEqual(24);
      expect(text, line).toContain('yarn: how much yarn');
    }
  });
  it('leads on only to questions that there are', () => {
    for (const { paths } of TOPICS) for (const path of paths) expect(registry.get(path), path).toBeDefined();
  });
  it.each([
    ['yarn', 'yardage weighed'],
    ['count', 'stitches row'],
    ['hook', 'lookup hook'],
    ['cost', 'blanket materials'],
    ['size', 'resize'],
    ['stitches', 'stitches row'],
    ['border', 'border spacing'],
    ['colours', 'blanket colours'],
    ['colors', 'blanket colours'],
    ['join', 'joining'],
    ['ends', 'blanket materials'],
    ['safe', 'lookup care'],
    ['print', 'motif words'],
    ['group', 'together open'],
    ['lost', 'stitches which'],
    ['start', 'motif define'],
    ['learn', 'lesson next'],
    ['teach', 'lesson list'],
    ['class', 'along join'],
    ['how much wool', 'yardage weighed'],
  ])('%s leads to /%s', async (word, path) => {
    const answer = await room.ask(`/help ${word}`);
    expect(answer.ok).toBe(true);
    expect(answer.data.questions).toContain(path);
  });
  it('lists the choices of an option', async () => {
    expect(await room.text('/help stitches row')).toContain('diagonal, blocks, clusters');
  });
});

describe('words without a name', () => {
  it('belong to the option that takes them', async () => {
    expect((await room.ask('/lookup term treble')).figures['meanings']!.value).toBe(2);
    expect(await room.ask('/lookup size throw')).toMatchObject({ ok: true, question: '/lookup size' });
    expect(await room.ask('/help yarn')).toMatchObject({ ok: true, question: '/help' });
  });
  it('of a command alone show what it can answer', async () => {
    const answer = await room.ask('/yardage');
    expect(answer).toMatchObject({ ok: true, question: '/help' });
    expect(answer.data.questions).toContain('yardage swatch');
    expect((await room.ask('/stitches rows')).hint).toBe('Did you mean /stitches row?');
  });
});

describe('/lookup term', () => {
  it.each([
    'hdc2tog',
    'magic ring',
    'blocking',
    'whip stitch',
    'foundation chain',
    'turning chain',
    'make along',
  ])('knows %s', async (term) => {
    expect(await room.ask(`/lookup term term:"${term}"`)).toMatchObject({ ok: true });
  });
  // code-knacker.de/haekelschrift.htm
  it.each([
    ['fM', 'sc'],
    ['hStb', 'hdc'],
    ['Stäbchen', 'dc'],
    ['Kettm', 'sl st'],
  ])('knows the German %s', async (term, US) => {
    const answer = await room.ask(`/lookup term term:"${term}"`);
    expect(answer.data.meanings[0].US).toBe(US);
  });
});
