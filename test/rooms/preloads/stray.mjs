// Loaded before the program: when it says the first thing, or at SIGUSR2 where it is told to wait for that, something
// goes wrong that nobody waits for (STRAY=rejected) or nobody catches (STRAY=thrown).
function stray() {
  if (process.env.STRAY === 'thrown')
    setImmediate(() => {
      throw new Error('nobody catches this');
    });
  else void Promise.reject(new Error('nobody waits for this'));
}

if (process.env.STRAY_AT === 'signal') process.on('SIGUSR2', stray);
else {
  const { stdout } = process;
  const { write } = stdout;
  stdout.write = (...said) => {
    stdout.write = write;
    stray();
    return write.apply(stdout, said);
  };
}
