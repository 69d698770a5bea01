/** Scattering as a mixed-integer program: a place has one kind, a kind its quota, a side with two alike counts one. */
export function scatterProgram(columns: number, rows: number, quotas: readonly number[]): string {
  const places = columns * rows;
  const x = (place: number, kind: number) => `x${place}_${kind}`;
  const sides: [number, number][] = [];
  for (let place = 0; place < places; place++) {
    if (place % columns < columns - 1) sides.push([place, place + 1]);
    if (place + columns < places) sides.push([place, place + columns]);
  }
  const kinds = quotas.map((_, kind) => kind);
  const all = Array.from({ length: places }, (_, place) => place);
  return [
    'Minimize',
    ` touches: ${sides.length === 0 ? '0 x0_0' : sides.map((_, side) => `t${side}`).join(' + ')}`,
    'Subject To',
    ...all.map((place) => ` ${kinds.map((kind) => x(place, kind)).join(' + ')} = 1`),
    ...kinds.map((kind) => ` ${all.map((place) => x(place, kind)).join(' + ')} = ${quotas[kind]!}`),
    ...sides.flatMap(([a, b], side) => kinds.map((kind) => ` ${x(a, kind)} + ${x(b, kind)} - t${side} <= 1`)),
    'Bounds',
    ...sides.map((_, side) => ` 0 <= t${side} <= 1`),
    'Binary',
    ...all.flatMap((place) => kinds.map((kind) => ` ${x(place, kind)}`)),
    'End',
  ].join('\n');
}
