/** Steps that can be taken back and forth. A new step drops what was taken back. */
export class History<Step> {
  #steps: Step[];
  #at = 0;
  constructor(first: Step) {
    this.#steps = [first];
  }

  get now(): Step {
    const step = this.#steps[this.#at];
    if (step === undefined) throw new RangeError("no step");
    return step;
  }
  get canUndo(): boolean {
    return this.#at > 0;
  }
  get canRedo(): boolean {
    return this.#at < this.#steps.length - 1;
  }

  add(step: Step): void {
    this.#steps = [...this.#steps.slice(0, this.#at + 1), step];
    this.#at++;
  }
  undo(): void {
    if (this.canUndo) this.#at--;
  }
  redo(): void {
    if (this.canRedo) this.#at++;
  }
}
