/** The way to a server, as a network that can be made to fail: what is asked goes through it, and what is answered. */
import { connect, createServer, type AddressInfo, type Server as Listener, type Socket } from 'node:net';

/**
 * `open` lets everything through; `deaf` lets what is asked through, and cuts the connection when it is answered; `cut` cuts it when
 * something is asked, which never arrives; `closed` lets nobody in; `silent` lets them in and says nothing.
 */
export type Mood = 'open' | 'deaf' | 'cut' | 'closed' | 'silent';

export class Way {
  mood: Mood = 'open';
  /** What it is in once it has cut a connection. */
  after: Mood = 'open';
  /** ms that each answer takes longer. */
  slow = 0;
  /** Told of each thing that is asked, before it goes on: what it says may change the mood. */
  heard: (asked: string) => void = () => undefined;
  private readonly sockets = new Set<Socket>();

  private constructor(
    private to: number,
    private readonly listener: Listener,
    readonly port: number,
  ) {}

  static async to(port: number): Promise<Way> {
    const listener = createServer();
    await new Promise<void>((done) => listener.listen(0, '127.0.0.1', done));
    const way = new Way(port, listener, (listener.address() as AddressInfo).port);
    listener.on('connection', (socket) => way.lead(socket));
    return way;
  }

  /** Leads to another server from here on; whoever is on the way is cut off. */
  turn(port: number): void {
    this.to = port;
    this.cutAll();
  }

  cutAll(): void {
    for (const socket of this.sockets) socket.destroy();
  }

  close(): void {
    this.cutAll();
    this.listener.close();
  }

  private lead(from: Socket): void {
    if (this.mood === 'closed') {
      from.destroy();
      return;
    }
    const there = connect(this.to, '127.0.0.1');
    const end = () => {
      from.destroy();
      there.destroy();
    };
    const cut = () => {
      this.mood = this.after;
      end();
    };
    for (const socket of [from, there]) {
      this.sockets.add(socket);
      socket.setNoDelay(true);
      socket.on('error', end);
      socket.on('close', () => {
        this.sockets.delete(socket);
        end();
      });
    }
    from.on('data', (data) => {
      this.heard(data.toString('latin1'));
      if (this.mood === 'cut') cut();
      else if (this.mood !== 'silent') there.write(data);
    });
    there.on('data', (data) => {
      if (this.mood === 'deaf') cut();
      else if (this.mood !== 'silent' && this.slow > 0) setTimeout(() => from.write(data), this.slow);
      else if (this.mood !== 'silent') from.write(data);
    });
  }
}
