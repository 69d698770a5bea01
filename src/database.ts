/** `npm run database`: makes the tables or brings them up to date, and lets the role that runs the program use them. */
import { parseArgs } from 'node:util';
import { BadEnvironment, type Environment } from './environment.ts';
import { NotSaved } from './projects/not-saved.ts';
import { prepareDatabase } from './projects/postgres/prepare.ts';

const HOW = `npm run database makes the tables of the database of DATABASE_URL, or brings them up to date.
npm run database -- --for ROLE lets a role use them as well: read and write rows, and nothing else.`;

const say = (line: string) => void process.stdout.write(`${line}\n`);

/** Resolves with the status: 0 where the tables are as they should be. */
export async function database(args: readonly string[], { database: url }: Environment): Promise<number> {
  let role;
  try {
    role = parseArgs({ args: [...args], options: { for: { type: 'string' } } }).values.for;
  } catch {
    say(HOW);
    return 1;
  }
  if (url === undefined) throw new BadEnvironment('DATABASE_URL is not set. See .env.example.');
  try {
    const { from, to, superuser, allowed } = await prepareDatabase(url, role);
    say(
      from === to
        ? `The tables are there, of version ${to}.`
        : from === 0
          ? `The tables were made, of version ${to}.`
          : `The tables were brought from version ${from} to version ${to}.`,
    );
    if (allowed !== undefined)
      say(
        allowed.superuser
          ? `${allowed.role} is a superuser: it may do everything, whatever it is allowed here. Run the program as a role that is none.`
          : allowed.makes
            ? `${allowed.role} may read and write their rows, and make tables of its own beside them. Take that away: revoke create on schema public from public; see docs/several-machines.md.`
            : `${allowed.role} may read and write their rows, and neither make nor drop a table.`,
      );
    else if (superuser)
      say(
        'The role of DATABASE_URL is a superuser. Run the program as a role that is none: npm run database -- --for ROLE.',
      );
    return 0;
  } catch (error) {
    if (!(error instanceof NotSaved)) throw error;
    say(`${error.message}\n  ${error.hint}`);
    return 1;
  }
}
