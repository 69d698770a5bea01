/** Measures are shown as they were typed: a ball of 100 g is no ball of 3.53 oz to anybody. */
import { describe, expect, it } from 'vitest';
import { measuresIn, unitsTyped } from '../../src/core/base/as-typed.ts';
import { asking } from '../asking.ts';

interface Told {
  readonly headline: string;
  readonly working: readonly { readonly shown: string }[];
  readonly assumptions: readonly string[];
}
async function told(units: 'imperial' | 'metric', line: string): Promise<Told & { readonly all: string }> {
  const { ask } = asking();
  await ask(`/settings change units:${units}`);
  const said = (await ask(line)) as unknown as Told;
  const { headline, assumptions, working } = said;
  const { lines } = said as unknown as { readonly lines: readonly string[] };
  return {
    ...said,
    all: [headline, ...lines, ...assumptions, ...working.map(({ shown }) => shown)].join('\n'),
  };
}

describe('what was typed in other units than one’s own', () => {
  it('stays as it was typed in the working, and what comes of it is in one’s own', async () => {
    const { working, all, headline } = await told(
      'imperial',
      '/yardage weighed motif:18g motifs:80 ball:170m/100g',
    );
    expect(working[0]?.shown).toBe(
      'weight × ball length ÷ ball weight = 18 g × 170 m ÷ 100 g = 30.6 m = 33.465 yd',
    );
    expect(all).not.toMatch(/3\.5\d* oz|185\.9/);
    // 80 × 33.465 yd and a tenth of it: 2944.88 yd.
    expect(headline).toMatch(/^80 motifs take 2945 yd/);
  });

  it('goes the other way as well', async () => {
    const { working, all } = await told('metric', '/yardage weighed motif:0.6oz motifs:80 ball:364yd/7oz');
    expect(working[0]?.shown).toMatch(/0\.6 oz × 364 yd ÷ 7 oz = 31\.2 yd = 28\.529 m$/);
    expect(all).not.toMatch(/198\.|332\.8/);
  });

  it('says over what a gauge is counted', async () => {
    const { all, assumptions } = await told('imperial', '/gauge compare have:14x10 want:13x10 hook:5mm');
    expect(all).toMatch(/Over 10 cm: yours/);
    expect(all).not.toMatch(/3\.94/);
    expect(assumptions[0]).toBe('14x10 and 13x10 are read over 10 cm, as no length was given.');
    const over = await told('metric', '/gauge compare have:"14x10 over 4in" want:"13x10 over 4in"');
    expect(over.all).toMatch(/Over 4 in: yours/);
    expect(over.all).not.toMatch(/10\.2 cm/);
  });

  it('counts a gauge that names no length over that of the other in the same phrase, if they are alike', async () => {
    const alike = await told('metric', 'the pattern has 14 sts in 4 inches but I get 16');
    expect(alike.headline).toMatch(/12\.5 % too narrow/);
    // An option that is typed means 10 cm, as it says.
    const typed = await told('metric', '/gauge compare have:16 want:"14 over 4in"');
    expect(typed.headline).toMatch(/13\.9 % too narrow/);
    // 3.5 to the inch are 14 to four of them: 16 beside it is counted over its own 10 cm.
    const other = await told('metric', '/gauge compare have:16 want:"3.5 per inch"');
    expect(other.assumptions[0]).not.toMatch(/is counted over/);
    expect(other.headline).toMatch(/13\.9 % too narrow/);
  });

  it('is the same in plain words', async () => {
    const { all } = await told('imperial', '80 squares at 18g each, 170m per 100g, how many balls');
    expect(all).toMatch(/18 g × 170 m ÷ 100 g/);
  });

  it('says by which units bare numbers were read where others stand beside them', async () => {
    const mixed = await told('imperial', '/resize width:50 height:60in side:15cm');
    expect(mixed.assumptions[0]).toBe('Read in your own units, as none stood there: width 50 in inches.');
    const plain = await told('imperial', '/resize width:50 height:60in side:6');
    expect(plain.all).not.toMatch(/Read in your own units/);
  });
});

describe('measures in an option', () => {
  it.each([
    ['ball', '364yd/7oz', ['imperial', 'imperial']],
    ['ball', '220yd/100g', ['imperial', 'metric']],
    ['ball', '170/100', []],
    ['weight', '18 grams', ['metric']],
    ['weight', '0.6 ounces', ['imperial']],
    ['gauge', '13x10', ['metric']],
    ['gauge', '13x10 over 4in', ['imperial']],
    ['gauge', '3.5 sts per inch', ['imperial']],
    ['gauge', 'nonsense', []],
    ['length', '60in', []],
  ])('%s %s', (kind, text, units) => {
    expect(measuresIn(kind, text).map(([, unit]) => unit)).toEqual(units);
  });

  it.each([
    ['15cm', 'metric'],
    ['60in', 'imperial'],
    ['50"', 'imperial'],
    ['4 ft', 'imperial'],
    ['50', undefined],
  ])('%s is typed in %s', (text, units) => {
    expect(unitsTyped(text)).toBe(units);
  });
});
