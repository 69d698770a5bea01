/**
 * One PostgreSQL for a whole run of the tests: begun when a test first asks for it, thrown away when all are done. Whoever asks
 * connects here and is told where it is.
 */
import { createServer, type AddressInfo } from 'node:net';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where to ask for it. */
    postgresPort: number;
  }
}

export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  let server: Promise<{ url(): string; throwAway(): Promise<void> }> | undefined;
  const asked = createServer((socket) => {
    socket.on('error', () => undefined);
    server ??= import('./server.ts').then(({ Server }) => Server.begin());
    server.then(
      (begun) => socket.end(begun.url()),
      (error: unknown) => socket.end(String(error)),
    );
  });
  await new Promise<void>((done) => asked.listen(0, '127.0.0.1', done));
  project.provide('postgresPort', (asked.address() as AddressInfo).port);
  return async () => {
    asked.close();
    await (await server?.catch(() => undefined))?.throwAway();
  };
}
