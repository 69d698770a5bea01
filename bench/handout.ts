/** A blanket to print against its picture alone, and what the thread that listens notices of it. */
import type { AnswerFile } from '../src/chat/answer.ts';
import { closePaper, toPdf } from '../src/paper/to-pdf.ts';
import type { Paper } from '../src/paper/paper.ts';
import { closePictures, toPng } from '../src/pictures/png.ts';
import { asking } from '../test/asking.ts';
import { largeBlanket } from './blanket.ts';
import { median, sideBySide, timed } from './measure.ts';
import { longestPause } from './picture.ts';
import { digits, figuresOf, time, times, type BenchRow } from './table.ts';

const ROUNDS = 5;

const pagesIn = (pdf: Uint8Array) =>
  Buffer.from(pdf)
    .toString('latin1')
    .match(/\/Type \/Page\b(?!s)/g)?.length ?? 0;

export async function bench(): Promise<BenchRow[]> {
  const room = asking();
  await largeBlanket(room);
  const contentOf = async (line: string): Promise<AnswerFile['content']> => {
    await room.ask(line);
    const content = room.files.at(-1)?.content ?? [...room.sheets.values()].at(-1);
    room.files.length = 0;
    if (content === undefined) throw new Error(`nothing came of ${line}`);
    return content;
  };
  const sheet = async (): Promise<Paper> => {
    const content = await contentOf('/blanket handout');
    if (typeof content === 'string') throw new Error('no sheet came of it');
    return content;
  };
  const drawn = async (): Promise<string> => {
    const content = await contentOf('/blanket picture');
    if (typeof content !== 'string') throw new Error('no picture came of it');
    return content;
  };
  try {
    const pdf = await toPdf(await sheet());
    const whole = await sideBySide(
      ROUNDS,
      () => timed(async () => toPdf(await sheet())),
      () => timed(async () => toPng(await drawn())),
    );
    const pauses: number[] = [];
    const paused: number[] = [];
    for (let round = 0; round < ROUNDS; round++) {
      pauses.push(await longestPause(async () => toPdf(await sheet())));
      paused.push(await longestPause(async () => toPng(await drawn())));
    }
    return [
      {
        what: 'A 20 × 25 blanket to print: asked, laid out, written as PDF in the worker',
        ...figuresOf(whole, 'its picture alone, asked, drawn and encoded'),
        note: `${pagesIn(pdf)} pages, ${digits(pdf.length / 1000)} kB.`,
      },
      {
        what: 'Longest pause of the event loop while it is made',
        ours: time(median(pauses)),
        reference: `${time(median(paused))}: while its picture is made`,
        ratio: times(median(pauses) / median(paused)),
        note: `Median of ${ROUNDS}; the longest of all was ${time(Math.max(...pauses))}.`,
      },
    ];
  } finally {
    await closePaper();
    await closePictures();
  }
}
