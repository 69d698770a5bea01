/**
 * Wraps per inch by yards per pound, as a spinning magazine's chart of yarn standards sets them side by side
 * (scribd.com/document/657653690). A yarn whose band says length and weight is read off it; the middle of a range is taken
 * (derived), at both ends of the chart its limit.
 */
export const WRAPS_BY_LENGTH: readonly { readonly yardsPerPound: number; readonly wpi: number }[] = [
  { yardsPerPound: 2401, wpi: 18 },
  { yardsPerPound: 1901, wpi: 17 },
  { yardsPerPound: 1201, wpi: 14.5 },
  { yardsPerPound: 901, wpi: 12.5 },
  { yardsPerPound: 601, wpi: 10.5 },
  { yardsPerPound: 401, wpi: 8.5 },
  { yardsPerPound: 0, wpi: 7 },
];
