/** One doing for all who wait for it: whoever asks is answered by one that began after the asking. */
export class SharedRun<T> {
  private running: Promise<T> | undefined;
  private next: Promise<T> | undefined;

  constructor(private readonly run: () => Promise<T>) {}

  /** Resolves, or rejects, as a run does that was begun after this was asked. */
  once(): Promise<T> {
    if (this.running === undefined) return this.begin();
    // The one that is under way may have looked already.
    this.next ??= this.running.then(
      () => this.begin(),
      () => this.begin(),
    );
    return this.next;
  }

  private begin(): Promise<T> {
    this.next = undefined;
    const running = this.run().finally(() => {
      if (this.running === running) this.running = undefined;
    });
    this.running = running;
    return running;
  }
}
