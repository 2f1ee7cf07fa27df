/** Says on standard error what long work is at, on a terminal only. */
export interface Progress {
  step(what: string): void;
  done(): void;
}

/** Progress on one line that is overwritten; nothing where standard error is not a terminal. */
export function progressOn(stream: { isTTY?: boolean; write(text: string): unknown }): Progress {
  const show = (text: string) => {
    if (stream.isTTY === true) stream.write(`\r\u001b[K${text}`);
  };
  return { step: (what) => show(`${what} …`), done: () => show('') };
}
