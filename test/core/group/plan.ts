/** A small invented group blanket for the tests. */
import type { GroupPlan } from '../../../src/core/group/events.ts';

export function groupPlan({
  quotas = [4, 2],
  spares = 0,
  columns = 3,
  ...rest
}: Partial<GroupPlan> & { quotas?: number[]; spares?: number } = {}): GroupPlan {
  const layout = quotas.flatMap((quota, kind) => Array.from({ length: quota }, () => ({ kind, turn: 0 })));
  return {
    name: 'Bean row throw',
    kinds: quotas.map((quota, kind) => ({
      name: ['furrow', 'trellis', 'compost', 'shed'][kind] ?? `kind ${kind}`,
      shape: 'diagonal',
      size: 12,
      stitch: 'hdc',
      runs: [
        { colour: 'moss', rows: 12 },
        { colour: kind % 2 === 0 ? 'sand' : 'plum', rows: 12 },
      ],
      weight: 6,
      quota,
      spares,
    })),
    columns,
    rows: layout.length / columns,
    layout,
    side: 15,
    tolerance: 3,
    joining: { method: 'whip' },
    border: { rounds: [{ stitch: 'hdc', colour: 'moss' }], corner: 3 },
    yarns: ['moss', 'sand', 'plum'].map((colour) => ({ colour, ball: { m: 170, g: 100 } })),
    reserve: 10,
    joinable: 'anyone',
    ...rest,
  };
}
