/** Lines of a stream, parted at line feeds only: one question a line, whatever else a line holds. */

/** What is kept of a line; the rest of a longer one is let go, and the line is refused as too long anyway. */
const KEPT = 100_000;

export async function* linesOf(input: AsyncIterable<Uint8Array | string>): AsyncGenerator<string> {
  const decoder = new TextDecoder();
  let open = '';
  for await (const chunk of input) {
    const text = typeof chunk === 'string' ? chunk : decoder.decode(chunk, { stream: true });
    const parts = text.split('\n');
    const last = parts.pop() ?? '';
    for (const part of parts) {
      yield (open + part).slice(0, KEPT).replace(/\r$/, '');
      open = '';
    }
    if (open.length < KEPT) open += last;
  }
  if (open !== '') yield open.slice(0, KEPT);
}
