/** Numbers held as doubles from the start: an array engine then neither boxes nor converts them. */
const template: readonly number[] = new Array<number>(4096).fill(0.5).fill(0);

/**
 * A fresh array of zeros, at most 4096. Cheaper to make than a typed array, which matters where a judgement takes a
 * few microseconds.
 */
export function zeros(count: number): number[] {
  return template.slice(0, count);
}
