/** Signal of a first Ctrl-C: long work ends early with the best so far. */
export interface Interrupt {
  readonly signal: AbortSignal;
  /** Ctrl-C ends the process again, as it does without us. */
  readonly done: () => void;
}

/** Catches the first Ctrl-C and tells `say`; the second one ends the process with exit code 130 at once. */
export function onInterrupt(say: () => void): Interrupt {
  const controller = new AbortController();
  const listener = () => {
    if (controller.signal.aborted) process.exit(130);
    controller.abort();
    say();
  };
  process.on("SIGINT", listener);
  return { signal: controller.signal, done: () => process.off("SIGINT", listener) };
}
