/** The line to a server, which can be cut, held still, closed, and led to another server: what is connected through it notices. */
import { connect, createServer, type AddressInfo, type Socket } from 'node:net';

export class Line {
  private readonly sockets = new Set<Socket>();
  private held = false;
  private open = true;

  private constructor(
    private port: number,
    private readonly server: ReturnType<typeof createServer>,
  ) {}

  /** A line to a port of this machine. */
  static async to(port: number): Promise<Line> {
    const server = createServer();
    const line = new Line(port, server);
    server.on('connection', (near) => line.lead(near));
    server.listen(0, '127.0.0.1');
    await new Promise((done) => server.once('listening', done));
    return line;
  }

  /** The same address, reached through this line. */
  through(url: string): string {
    const by = new URL(url);
    by.port = String((this.server.address() as AddressInfo).port);
    return by.href;
  }

  /** Cuts what is connected, in the middle of whatever it says; who connects anew is let through. */
  cut(): void {
    for (const socket of this.sockets) socket.resetAndDestroy();
  }

  /** Nobody gets through until it is opened again. */
  close(): void {
    this.open = false;
    this.cut();
  }

  reopen(): void {
    this.open = true;
  }

  /** Nothing moves in either direction, and nobody is told why; false lets it go on. */
  hold(held: boolean): void {
    this.held = held;
    for (const socket of this.sockets)
      if (held) socket.pause();
      else socket.resume();
  }

  /** From now on it leads to another port. */
  leadTo(port: number): void {
    this.port = port;
    this.cut();
  }

  async end(): Promise<void> {
    this.close();
    await new Promise((done) => this.server.close(done));
  }

  private lead(near: Socket): void {
    near.on('error', () => undefined);
    if (!this.open) {
      near.resetAndDestroy();
      return;
    }
    const far = connect(this.port, '127.0.0.1');
    far.on('error', () => near.resetAndDestroy());
    // Where nobody listens at a port that may be given to anybody, a socket can connect to itself.
    far.once('connect', () => {
      if (far.localPort === this.port) far.resetAndDestroy();
    });
    for (const [from, to] of [
      [near, far],
      [far, near],
    ] as const) {
      this.sockets.add(from);
      from.on('data', (data) => to.write(data));
      from.on('end', () => to.end());
      from.on('close', () => {
        this.sockets.delete(from);
        to.destroy();
      });
      if (this.held) from.pause();
    }
  }
}
