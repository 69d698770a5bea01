/** A change of where she is, kept once for each press. */
import type { Context } from '../../src/chat/context.ts';
import { findMotif } from '../../src/projects/motifs.ts';
import type { MakerDoc, Motif } from '../../src/projects/schema.ts';

/**
 * Changes where she is with a motif, once for each press; a press that arrives again is told what was told then. What is
 * told stays small: it is remembered with the press.
 */
export async function change<R extends object>(
  { maker, once, projects }: Context,
  name: string | undefined,
  to: (doc: MakerDoc, motif: Motif) => R,
): Promise<R & { readonly motif: Motif }> {
  const { tell, doc } = await projects.changeMakerOnce(maker.id, maker.name, once, (doc) => {
    const motif = findMotif(doc, name);
    return { told: to(doc, motif), name: motif.name };
  });
  return { ...tell.told, motif: findMotif(doc, tell.name) };
}
