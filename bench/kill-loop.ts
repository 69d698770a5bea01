/** `npx tsx bench/kill-loop.ts [kills]`: the program killed in the middle of presses, again and again; what was lost, as a table. */
import { killLoop } from '../test/rooms/discord/kill-loop.ts';

const kills = Number(process.argv[2] ?? 300);
const people = 8;
// Another moment for each kill, spread evenly, the same in every run.
let n = 0;
const spread = () => (++n * 0.618_033_988_75) % 1;

const report = await killLoop(kills, people, spread);
const sorted = [...report.back].sort((a, b) => a - b);
const at = (share: number) => `${Math.round(sorted[Math.floor((sorted.length - 1) * share)] ?? 0)} ms`;
const rows: [string, string | number][] = [
  ['kills (SIGKILL)', report.kills],
  ['people pressing at once', people],
  ['presses', report.presses],
  ['acknowledged', report.acknowledged],
  ['cut off by a kill, pressed again', report.cut],
  ['of those saved already, told so and not counted again', report.savedUntold],
  ['acknowledged and lost', report.lost],
  ['counted or answered twice', report.twice],
  ['lines of the log with a token', report.leaks],
  ['from start to first answer, median', at(0.5)],
  ['from start to first answer, slowest', at(1)],
];
for (const [what, value] of rows) process.stdout.write(`| ${what} | ${value} |\n`);
process.exitCode = report.lost + report.twice + report.leaks === 0 ? 0 : 1;
