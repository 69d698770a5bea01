/** `npm run demo`: one blanket from swatch to border, told in the terminal; its pictures stay in demo/pictures. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { closePictures, toPng } from '../src/pictures/png.ts';
import { closePaper, toPdf } from '../src/paper/to-pdf.ts';
import { play } from './play.ts';
import { STORY } from './story.ts';

const pictures = relative(process.cwd(), fileURLToPath(new URL('pictures', import.meta.url)));
const data = mkdtempSync(join(tmpdir(), 'loopwright-demo-'));
try {
  rmSync(pictures, { recursive: true, force: true });
  const { asked, refused, files } = await play(STORY, {
    data,
    pictures,
    makers: { toPng, toPdf },
    say: (text) => {
      console.log(text);
    },
  });
  console.log(
    `\n${asked} lines, ${asked - refused.length} answered. ${files.length} files are in ${pictures}.`,
  );
  for (const line of refused) console.error(line);
  if (refused.length > 0) process.exitCode = 1;
} finally {
  await closePictures();
  await closePaper();
  rmSync(data, { recursive: true, force: true });
}
