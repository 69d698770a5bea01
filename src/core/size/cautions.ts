/** Which cautions a finished size and the work in it call for. Decided here alone, said wherever a size is told. */
import { BABY_BLANKET, LONG_WORK } from '../../standards/blankets.ts';
import { caution } from '../../standards/care.ts';
import { keepDefined } from '../base/defined.ts';

/** Cautions for a blanket of this size in cm, made of so many motifs; 0 where their number is not known. */
export function careFor(width: number, height: number, motifs = 0): string[] {
  const [short, long] = [Math.min(width, height), Math.max(width, height)];
  return keepDefined([
    short <= BABY_BLANKET.shortCm && long <= BABY_BLANKET.longCm ? caution('baby') : undefined,
    motifs > LONG_WORK.motifs ? caution('hands') : undefined,
  ]);
}
