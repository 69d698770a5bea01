/** An authority of one's own and a server's certificate by it, made for a test with openssl; where there is none, such tests are left out. */
import { execFileSync } from 'node:child_process';
import { chownSync, copyFileSync, mkdtempSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { asOwner } from './place.ts';

/** Whether openssl is on this machine. */
export const CAN_CERTIFY = (() => {
  try {
    execFileSync('openssl', ['version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();

export interface Certificates {
  /** The authority by which the server's is, and one by which it is not. */
  readonly authority: string;
  readonly another: string;
  readonly key: string;
  readonly certificate: string;
}

const KEY = ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:prime256v1', '-nodes'];

/** For a server of this name, good for two days. */
export function certify(name: string): Certificates {
  const folder = mkdtempSync(join(tmpdir(), 'certificates-'));
  const at = (file: string) => join(folder, file);
  const openssl = (...args: string[]) => execFileSync('openssl', args, { stdio: 'ignore', cwd: folder });
  for (const authority of ['authority', 'another'])
    openssl(
      ...['req', '-x509', ...KEY, '-days', '2', '-subj', `/CN=Test ${authority}`],
      ...['-keyout', at(`${authority}.key`), '-out', at(`${authority}.pem`)],
    );
  writeFileSync(at('names'), `subjectAltName=DNS:${name}\n`);
  openssl('req', ...KEY, '-subj', `/CN=${name}`, '-keyout', at('server.key'), '-out', at('server.csr'));
  openssl(
    ...['x509', '-req', '-in', at('server.csr'), '-days', '2', '-extfile', at('names')],
    ...[
      '-CA',
      at('authority.pem'),
      '-CAkey',
      at('authority.key'),
      '-CAcreateserial',
      '-out',
      at('server.pem'),
    ],
  );
  return {
    authority: at('authority.pem'),
    another: at('another.pem'),
    key: at('server.key'),
    certificate: at('server.pem'),
  };
}

/** Has a server of this machine, asked as its owner, offer TLS beside what it offers already. */
export async function offerTls(url: string, { key, certificate }: Certificates): Promise<void> {
  const [shown] = await asOwner(url, 'show data_directory');
  const data = String(shown?.['data_directory']);
  const { uid, gid } = statSync(data);
  for (const [from, to] of [
    [key, 'server.key'],
    [certificate, 'server.crt'],
  ] as const) {
    copyFileSync(from, join(data, to));
    if (process.getuid?.() === 0) chownSync(join(data, to), uid, gid);
  }
  await asOwner(url, 'alter system set ssl = on');
  await asOwner(url, 'select pg_reload_conf()');
}
