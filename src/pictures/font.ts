/** The one typeface of the pictures: without a file of it, text vanishes from a picture without a word. */
export const FONT = {
  family: 'DejaVu Sans',
  files: ['dejavu-fonts-ttf/ttf/DejaVuSans.ttf', 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf'],
} as const satisfies Record<string, string | readonly string[]>;
