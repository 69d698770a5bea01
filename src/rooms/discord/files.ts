/** Files on their way out (drawings become PNG, sheets PDF) and in (an attachment becomes its text). */
import type { AnswerFile } from '../../chat/answer.ts';
import { makeFile, type Makers } from '../../chat/made-file.ts';
import { Problem } from '../../core/base/problem.ts';
import { LARGEST_EXPORT } from '../../projects/export.ts';
import { FILE_BYTES, MESSAGE, REQUEST_BYTES } from './limits.ts';
import { clean, fit } from './text.ts';

/** A file as the client sends it. */
export interface Sent {
  readonly attachment: Buffer;
  readonly name: string;
  readonly description: string;
}

export interface Outgoing {
  readonly files: readonly Sent[];
  /** What is to be said of files that could not be sent. */
  readonly notes: readonly string[];
}

/** Room for the texts that the message itself may need beside an answer's files. */
const OWN_TEXTS = 3;

export const sent = (name: string, content: string | Uint8Array, says: string): Sent => ({
  attachment:
    typeof content === 'string'
      ? Buffer.from(content)
      : Buffer.from(content.buffer, content.byteOffset, content.byteLength),
  name: name.replace(/[^A-Za-z0-9._-]/g, '-').slice(0, 100),
  description: fit(clean(says), MESSAGE.altText),
});

/** Makes an answer's files ready to send; what cannot be sent is said. Never rejects: a failed drawing goes to `fault`. */
export async function outgoing(
  files: readonly AnswerFile[],
  {
    limit = FILE_BYTES,
    makers,
    fault,
  }: { limit?: number | undefined; makers: Makers; fault: (error: unknown) => string },
): Promise<Outgoing> {
  const made: Sent[] = [];
  const notes: string[] = [];
  let total = 0;
  const room = MESSAGE.files - OWN_TEXTS;
  const mebibytes = (bytes: number) => `${Math.floor((bytes / 1024 / 1024) * 10) / 10} MiB`;
  for (const file of files.slice(0, room)) {
    try {
      const { name, bytes: content } = await makeFile(file, makers);
      const ready = sent(name, content, file.says);
      const bytes = ready.attachment.length;
      // The request carries the message's own texts too.
      if (bytes > limit || total + bytes > REQUEST_BYTES - FILE_BYTES / 2)
        notes.push(`${ready.name} is too large to send here, where a file may have ${mebibytes(limit)}.`);
      else {
        total += bytes;
        made.push(ready);
      }
    } catch (error) {
      notes.push(
        error instanceof Problem
          ? `${error.message} ${error.hint}`
          : `The file ${file.name} could not be made; that is noted as ${fault(error)}.`,
      );
    }
  }
  if (files.length > room) notes.push(`${files.length - room} more files had no room in one message.`);
  return { files: made, notes };
}

/** The largest file that is read: whatever an export writes can be taken back. */
const LARGEST_IN = LARGEST_EXPORT;
const FETCH_MS = 5_000;

/** Where the platform keeps what people attach. */
export const ATTACHMENT_HOSTS: readonly string[] = ['cdn.discordapp.com', 'media.discordapp.net'];

export interface Attached {
  readonly url: string;
  readonly size: number;
}

/** An attachment with the kind of file that the platform takes it for. */
export interface AttachedFile extends Attached {
  readonly name: string;
  readonly contentType: string | null;
}

interface Fetching {
  readonly option: string;
  readonly hint: string;
  /** Bytes that are read at most. */
  readonly most: number;
  readonly hosts?: readonly string[] | undefined;
}

/** The bytes of an attachment. Throws Problem: file-kept-elsewhere, file-too-large, file-not-fetched. */
async function attachedBytes(
  { url, size }: Attached,
  { option, hint, most, hosts = ATTACHMENT_HOSTS }: Fetching,
): Promise<Uint8Array> {
  const address = new URL(url);
  if (!hosts.includes(address.hostname))
    throw new Problem('file-kept-elsewhere', 'That file is kept somewhere unknown.', { option, hint });
  if (size > most) throw new Problem('file-too-large', 'That file is too large.', { option, hint });
  try {
    // Not followed elsewhere: only the platform's own store is asked.
    const response = await fetch(address, { redirect: 'error', signal: AbortSignal.timeout(FETCH_MS) });
    if (!response.ok || !response.body) throw new Error(`status ${response.status}`);
    const parts: Uint8Array[] = [];
    let length = 0;
    for await (const part of response.body as AsyncIterable<Uint8Array>) {
      length += part.length;
      // What it said of its size may not be so.
      if (length > most) throw new Problem('file-too-large', 'That file is too large.', { option, hint });
      parts.push(part);
    }
    return Buffer.concat(parts);
  } catch (error) {
    if (error instanceof Problem) throw error;
    throw new Problem('file-not-fetched', 'That file could not be fetched.', {
      option,
      hint: 'Attach it again in a moment.',
    });
  }
}

/** The text of an attachment. Throws a Problem about the option for anything that is not a text of sensible size. */
export async function attachedText(
  file: Attached,
  option: string,
  hosts?: readonly string[],
): Promise<string> {
  const hint = 'Attach a text file as this bot writes them.';
  const bytes = await attachedBytes(file, { option, hint, most: LARGEST_IN, hosts });
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new Problem('file-not-text', 'That file is not a text.', { option, hint });
  }
}

/** What a picture of each kind begins with; the W3C, RFC 9649 and CompuServe specifications of the formats say so. */
const PICTURES: readonly {
  readonly type: string;
  readonly ending: string;
  readonly begins: RegExp;
}[] = [
  { type: 'image/png', ending: 'png', begins: /^\x89PNG\r\n\x1a\n/ },
  { type: 'image/jpeg', ending: 'jpg', begins: /^\xff\xd8\xff/ },
  { type: 'image/webp', ending: 'webp', begins: /^RIFF[^]{4}WEBP/ },
  { type: 'image/gif', ending: 'gif', begins: /^GIF8[79]a/ },
];

export interface Picture {
  readonly bytes: Uint8Array;
  readonly ending: string;
}

/** An attached picture. Throws a Problem about the option for anything that is none, or cannot be posted. */
export async function attachedPicture(
  file: AttachedFile,
  option: string,
  hosts?: readonly string[],
): Promise<Picture> {
  const hint = `Attach a PNG, JPEG, WebP or GIF of at most ${FILE_BYTES / 1024 / 1024} MiB, or none.`;
  const none = () => new Problem('photo-not-a-picture', 'That file is not a picture.', { option, hint });
  const type = file.contentType?.split(';')[0]?.trim().toLowerCase();
  if (!PICTURES.some((picture) => picture.type === type)) throw none();
  const bytes = await attachedBytes(file, { option, hint, most: FILE_BYTES, hosts });
  // What it is called may not be so.
  const head = Buffer.from(bytes.subarray(0, 16)).toString('latin1');
  const is = PICTURES.find(({ begins }) => begins.test(head));
  if (!is) throw none();
  return { bytes, ending: is.ending };
}

/** Files as a request names them, and their bytes beside it. */
export const listed = (files: readonly Sent[]) =>
  files.map(({ name, description }, id) => ({ id, filename: name, description }));
export const raw = (files: readonly Sent[]) =>
  files.map(({ name, attachment }) => ({ name, data: attachment }));
