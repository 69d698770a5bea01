/** What every sheet to print has in common: its paper, its terms, its foot, and what is said of letters that it cannot show. */
import type { Answer, AnswerFile } from '../../src/chat/answer.ts';
import type { Mark } from '../../src/chat/asked.ts';
import { breathe } from '../../src/chat/breathe.ts';
import { opt } from '../../src/chat/options.ts';
import { listNames } from '../../src/core/base/nearest-name.ts';
import { forReader, type Reader } from '../../src/core/base/reader.ts';
import { sayBlocks, textsOf, type Block, type Paper, type PaperSize } from '../../src/paper/paper.ts';
import { SUBSTITUTE, undrawable } from '../../src/pictures/drawing.ts';
import { caution } from '../../src/standards/care.ts';
import { fileName } from './file-name.ts';
import { termsEnding, termsOption, writtenIn } from './terms-option.ts';

/** The options of every question that prints. */
export const sheetOptions = () => ({
  terms: termsOption(),
  paper: opt
    .choice(
      'The paper; Letter for who measures in inches, else A4',
      [{ value: 'A4' }, { value: 'Letter', also: ['US letter', 'us'] }],
      'A4',
    )
    .optional(),
  print: opt
    .choice(
      'large prints in letters of 18 points',
      [
        { value: 'usual', also: ['normal', 'small'] },
        { value: 'large', also: ['big', 'large print'] },
      ],
      'large',
    )
    .optional(),
});

/** What marks these options in plain words. */
export const SHEET_MARKS = {
  terms: { choices: { UK: 'uk', US: 'us' } },
  paper: { never: true },
  print: { never: true },
} as const satisfies Record<string, Mark>;

export interface Wished {
  readonly paper?: PaperSize | undefined;
  readonly print?: 'usual' | 'large' | undefined;
}

export interface Sheet {
  readonly file: AnswerFile;
  readonly size: PaperSize;
  /** What the answer says of it. */
  readonly assumptions: readonly string[];
}

/** Cautions that every handout carries: it goes to people whom nobody knows. */
export const HANDOUT_CAUTIONS = [caution('baby'), caution('hands'), caution('heat')];

/** Texts that are said without a pause. */
const AT_ONCE = 400;

/** Every block in the reader's units and terms, and the letters of all their texts that cannot be drawn; others are heard meanwhile. */
async function sayAll(blocks: readonly Block[], reader: Reader) {
  const said: Block[] = [];
  const lacking = new Set<string>();
  let told: string[] = [];
  for (const block of blocks) {
    const one = sayBlocks([block], (text) => forReader(text, reader));
    const texts = textsOf(one);
    for (const letter of texts.flatMap(undrawable)) lacking.add(letter);
    said.push(...one);
    told = [...told, ...texts];
    if (told.length >= AT_ONCE) {
      told = [];
      await breathe();
    }
  }
  return { said, lacking: [...lacking] };
}

/** The sheet as a file: the terms at its top, the same for the same reader. */
export async function sheetOf(
  title: string,
  kind: string,
  blocks: readonly Block[],
  { reader, paper, print }: Wished & { readonly reader: Reader },
): Promise<Sheet> {
  const size = paper ?? (reader.units === 'imperial' ? 'Letter' : 'A4');
  const head: Block[] = [
    { kind: 'title', text: title },
    { kind: 'strong', text: writtenIn(reader) },
    ...(reader.hand === 'left'
      ? [{ kind: 'strong', text: 'Charts and directions are for the hook in the left hand.' } as const]
      : []),
  ];
  const { said, lacking } = await sayAll([...head, ...blocks], reader);
  const box = `${SUBSTITUTE} stands for a letter that the typeface of this sheet does not have.`;
  const sheet: Paper = {
    title,
    size,
    large: print === 'large',
    foot: `${title} · ${reader.terms} terms`,
    blocks: lacking.length === 0 ? said : [...said, { kind: 'small', text: box }],
  };
  const large = sheet.large ? '-large' : '';
  return {
    file: {
      name: `${fileName(title)}-${kind}-${termsEnding(reader)}${large}.pdf`,
      says: `${title}, to print on ${size}, in ${reader.terms} terms.`,
      content: sheet,
    },
    size,
    assumptions: [
      ...(paper === undefined ? [`On ${size}, as no paper was named.`] : []),
      ...(lacking.length === 0
        ? []
        : [
            `The typeface has no ${listNames(lacking, 12)}: a box (${SUBSTITUTE}) stands for each on the sheet.`,
          ]),
    ],
  };
}

/** An answer’s data of a sheet. */
export const sheetData = ({ size }: Sheet, reader: Reader, { print }: Wished): Answer['data'] => ({
  paper: size,
  print: print ?? 'usual',
  terms: reader.terms,
});
