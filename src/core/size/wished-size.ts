/** How large a blanket is wished: by width and height, or by the word for what it is to lie on. */
import type { StandardSize } from '../../standards/sizes.ts';
import { Problem } from '../base/problem.ts';
import { SAMPLE_SIZE } from '../base/samples.ts';

/** A wished width and height in cm. */
export interface WishedSize {
  readonly width: number;
  readonly height: number;
}

/**
 * The wish, or undefined where nothing of it is given. Throws a Problem where it is given twice over, or half of it.
 */
export function readWishedSize(asked: {
  width?: number | undefined;
  height?: number | undefined;
  for?: StandardSize | undefined;
}): WishedSize | undefined {
  const { width, height } = asked;
  if (asked.for !== undefined) {
    if (width !== undefined || height !== undefined)
      throw new Problem('size-given-twice', 'The size is given twice, by a word and by its sides.', {
        option: 'for',
        hint: 'Give width and height, or for, not both.',
      });
    return { width: asked.for.width, height: asked.for.height };
  }
  if (width === undefined && height === undefined) return undefined;
  if (width === undefined || height === undefined) {
    const option = width === undefined ? 'width' : 'height';
    throw new Problem(`${option}-missing`, `The option ${option} is missing.`, {
      option,
      hint: `Give both sides, like ${SAMPLE_SIZE}, or a word, like for:throw.`,
    });
  }
  return { width, height };
}

/** The same where the answer rests on it. Throws a Problem where no size is given at all. */
export function requireWishedSize(asked: Parameters<typeof readWishedSize>[0]): WishedSize {
  const wish = readWishedSize(asked);
  if (wish) return wish;
  throw new Problem('width-missing', 'How large the blanket is to be is not said.', {
    option: 'width',
    hint: `Give ${SAMPLE_SIZE}, or a word, like for:throw.`,
  });
}
