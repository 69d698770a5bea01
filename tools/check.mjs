// Types, lint and format, side by side: on two cores that halves the wait.
// Each prints only when it has something to say; one that fails fails the whole.
import { spawn } from 'node:child_process';

const CHECKS = ['npm run -s typecheck', 'npm run -s lint', 'npx prettier --check --cache --log-level warn .'];

const results = CHECKS.map(
  (check) =>
    new Promise((done) => {
      const run = spawn(check, { shell: true, stdio: ['ignore', 'pipe', 'pipe'] });
      let said = '';
      for (const stream of [run.stdout, run.stderr]) stream.on('data', (text) => (said += text));
      run.on('close', (code) => {
        if (code !== 0) process.stderr.write(`${said}\n${check} failed.\n`);
        done(code === 0);
      });
    }),
);
if (!(await Promise.all(results)).every(Boolean)) process.exitCode = 1;
