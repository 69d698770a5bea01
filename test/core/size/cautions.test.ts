import { describe, expect, it } from 'vitest';
import { careFor } from '../../../src/core/size/cautions.ts';
import { findUsualHook } from '../../../src/core/yarn/thickness.ts';
import { asking } from '../../asking.ts';

const BABY = /under 12 months/;

describe('cautions for a size', () => {
  it.each([
    // Sizes in inches as charities and the trade give them (projectlinusoregon.org; cthugsandkisses.org; sizes.com/home/cribs.htm).
    ['a charity’s baby blanket', 30, 36, true],
    ['a crib', 28, 52.375, true],
    ['the trade’s crib blanket', 45, 60, true],
    ['the same the other way round', 60, 45, true],
    ['a child’s blanket of 40 × 55 in', 40, 55, true],
    ['a teenager’s blanket, as narrow', 45, 65, false],
    ['the same the other way round', 65, 45, false],
    ['a throw', 50, 60, false],
    ['a twin blanket', 66, 90, false],
  ])('%s', (_, width, height, baby) => {
    expect(careFor(width * 2.54, height * 2.54).some((caution) => BABY.test(caution))).toBe(baby);
  });

  it.each([
    '/resize width:71cm height:133cm side:15cm',
    '/border spacing width:75cm height:90cm gauge:14',
    '/joining columns:5 rows:6 side:15cm',
  ])('is said by %s', async (line) => {
    expect((await asking().ask(line)).cautions.join()).toMatch(BABY);
  });

  it('thinks of hands where there are many motifs', () => {
    expect(careFor(200, 200, 101).join()).toMatch(/breaks/);
    expect(careFor(200, 200, 100)).toEqual([]);
  });
});

describe('a usual hook', () => {
  it('follows the yarn, by category or by its wraps', () => {
    expect(findUsualHook({ wpi: 2.5, category: 7 }).mm).toBe(15);
    expect(findUsualHook({ wpi: 2.5 }).mm).toBe(15);
    expect(findUsualHook({ wpi: 10.5, category: 4 }).mm).toBe(5);
    expect(findUsualHook({ wpi: 22 }).mm).toBeLessThan(3.5);
  });

  it('is said where none was given', async () => {
    const { assumptions } = await asking().ask('/yardage rough shape:clusters size:5 yarn:7');
    expect(assumptions).toContain('A hook of 15 mm, usual for jumbo yarn, as none was given.');
  });
});

describe('a border that the repeat moves', () => {
  it('says how far it is from lying flat', async () => {
    const far = await asking().ask('/border spacing width:5cm height:5cm gauge:13 multiple:100 plus:50');
    expect(far.lines?.[0]).toMatch(/% too many along the width: it will ruffle/);
    const near = await asking().ask('/border spacing width:120cm height:160cm gauge:14');
    expect(near.lines?.join()).not.toMatch(/too many|too few/);
  });

  it('leaves no motif without a stitch', async () => {
    expect(await asking().ask('/border spacing width:10cm height:10cm gauge:13 columns:50')).toMatchObject({
      ok: false,
      option: 'columns',
    });
  });
});

describe('a working in inches', () => {
  it('names ratios in the reader’s own units', async () => {
    const room = asking();
    await room.ask('/settings change units:imperial');
    const { working } = await room.ask('/joining columns:5 rows:6 side:6in');
    expect(working[0]?.shown).toContain('÷ in per yd = ');
    const swap = await room.ask('/yardage swap balls:8 ball:200m/100g new_ball:250m/100g');
    const tex = swap.working.find(({ label }) => label.includes('ex'));
    expect(tex?.shown ?? '').not.toContain('oz');
  });
});
