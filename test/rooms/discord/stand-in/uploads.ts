/** Bodies of requests: JSON, or multipart/form-data with `payload_json` and `files[n]`. */
import type { IncomingMessage } from 'node:http';
import { refusals } from './errors.ts';
import { LIMITS } from './limits.ts';

export interface Upload {
  /** The n of `files[n]`. */
  readonly index: string;
  readonly filename: string;
  readonly contentType: string;
  readonly bytes: Buffer;
}

export interface Body {
  readonly json: unknown;
  readonly uploads: readonly Upload[];
}

/** Reads a request. Throws 40005 over 25 MiB (resources/message.mdx:1072), 50109 where it is no JSON. */
export async function readBody(request: IncomingMessage): Promise<Body> {
  const pieces: Buffer[] = [];
  let size = 0;
  for await (const piece of request as AsyncIterable<Buffer>) {
    size += piece.length;
    if (size <= LIMITS.request) pieces.push(piece);
  }
  if (size > LIMITS.request) throw refusals.tooLarge();
  const raw = Buffer.concat(pieces);
  const type = request.headers['content-type'] ?? '';
  if (!type.startsWith('multipart/form-data')) return { json: parse(raw.toString() || '{}'), uploads: [] };

  let form: FormData;
  try {
    // Deprecated for the sake of servers that strangers write to; here the one client is under test.
    // eslint-disable-next-line @typescript-eslint/no-deprecated
    form = await new Response(raw, { headers: { 'content-type': type } }).formData();
  } catch {
    throw refusals.notJson();
  }
  const uploads: Upload[] = [];
  for (const [name, part] of form) {
    const index = /^files\[(\d+)\]$/.exec(name)?.[1];
    if (index !== undefined && typeof part !== 'string')
      uploads.push({
        index,
        filename: part.name,
        contentType: part.type,
        bytes: Buffer.from(await part.arrayBuffer()),
      });
  }
  const payload = form.get('payload_json');
  return { json: parse(typeof payload === 'string' ? payload : '{}'), uploads };
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw refusals.notJson();
  }
}
