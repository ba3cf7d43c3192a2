/// <reference types="office-js" />

/** Excel on the web takes 5 MB a request; half of it leaves room for what the estimate of bytes misses. */
export const bytesPerRequest = 2_500_000;

/** What one action and its object paths take on the wire beside its values. [bytes] */
export const bytesPerAction = 450;

/** Gathers actions into as few requests as the size limit allows; calculation rests while a request is carried out. */
export class Batch {
  readonly context: Excel.RequestContext;
  #bytes = 0;
  constructor(context: Excel.RequestContext) {
    this.context = context;
    this.#rest();
  }

  /** Makes room for so many bytes more: sends what has gathered when they would not fit. */
  async room(bytes: number): Promise<void> {
    if (this.#bytes > 0 && this.#bytes + bytes > bytesPerRequest) await this.send();
    this.#bytes += bytes;
  }

  /** Sends what has gathered. */
  async send(): Promise<void> {
    await this.context.sync();
    this.#bytes = 0;
    this.#rest();
  }

  #rest(): void {
    this.context.workbook.application.suspendApiCalculationUntilNextSync();
  }
}
