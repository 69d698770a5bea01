/**
 * Published charity sizes, made of equal sections: a square of 6 in divides every one of them, so the nearest whole number of motifs must hit it exactly.
 * Sources: cthugsandkisses.org (30 × 36, 36 × 48, 42 × 48 in); projectlinusoregon.org, "Blanket making guidelines" (40 × 60, 45 × 72 in,
 * by squares of 5 and 9 in); fromtheheartstitchers.org (27 × 36 in, by 9 in).
 */
import { expect, it } from 'vitest';
import { asking } from '../asking.ts';

it.each([
  [6, 30, 36, 5, 6],
  [6, 36, 48, 6, 8],
  [6, 42, 48, 7, 8],
  [5, 40, 60, 8, 12],
  [9, 45, 72, 5, 8],
  [9, 27, 36, 3, 4],
])('squares of %i in make %i by %i in, %i across and %i down', async (side, width, height, columns, rows) => {
  const room = asking();
  await room.ask('/settings change units:imperial');
  await room.ask('/motif define name:square shape:solid-square size:8');
  await room.ask(`/motif weigh name:square side:${side}`);
  const answer = await room.ask(`/blanket start name:gift kinds:square width:${width} height:${height}`);
  expect(answer.figures).toMatchObject({ columns: { value: columns }, rows: { value: rows } });
  expect(answer.figures['width']!.value).toBeCloseTo(width * 2.54, 9);
  const scaled = await room.ask(`/blanket scale width:${2 * width} height:${2 * height}`);
  expect(scaled.figures).toMatchObject({ columns: { value: 2 * columns }, rows: { value: 2 * rows } });
});
