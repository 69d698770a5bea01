/** A file of an answer as a room hands it out: drawings become PNG, sheets become PDF. */
import type { Paper } from '../paper/paper.ts';
import type { AnswerFile } from './answer.ts';

export type ToPng = (svg: string) => Promise<Uint8Array>;
export type ToPdf = (paper: Paper) => Promise<Uint8Array>;

/** Who makes what takes a thread of its own. */
export interface Makers {
  readonly toPng: ToPng;
  readonly toPdf: ToPdf;
}

/** The file with its bytes (or its text, as it is). Rejects as its maker does. */
export async function makeFile(
  { name, content }: Pick<AnswerFile, 'name' | 'content'>,
  { toPng, toPdf }: Makers,
): Promise<{ readonly name: string; readonly bytes: string | Uint8Array }> {
  if (typeof content !== 'string') return { name, bytes: await toPdf(content) };
  return name.endsWith('.svg')
    ? { name: name.replace(/\.svg$/, '.png'), bytes: await toPng(content) }
    : { name, bytes: content };
}
