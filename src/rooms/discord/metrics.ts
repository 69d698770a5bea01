/** What the health line tells: how many, how fast. No contents and nobody's name. */
export type Outcome = 'answers' | 'refusals' | 'faults' | 'lost';

const KEPT = 1_000;

export class Metrics {
  private readonly counts: Record<Outcome, number> = { answers: 0, refusals: 0, faults: 0, lost: 0 };
  private readonly times: number[] = [];
  private next = 0;

  note(outcome: Outcome, ms: number): void {
    this.counts[outcome] += 1;
    this.times[this.next] = ms;
    this.next = (this.next + 1) % KEPT;
  }

  /** Counts since the start; milliseconds over the latest thousand, from the arrival to the platform's receipt. */
  read(): Record<Outcome, number> & { p50: number; p99: number } {
    const sorted = [...this.times].sort((a, b) => a - b);
    const at = (share: number) =>
      Math.round((sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0) * 10) / 10;
    return { ...this.counts, p50: at(0.5), p99: at(0.99) };
  }
}
