/** Built by pushing fractions, so that an array engine keeps it packed and as doubles: nothing is boxed or converted. */
const template: readonly number[] = packed();

function packed(): number[] {
  const list: number[] = [];
  for (let i = 0; i < 4096; i += 1) list.push(0.5);
  return list.fill(0);
}

/**
 * A fresh array of zeros, at most 4096. Cheaper to make than a typed array, which matters where a judgement takes a
 * few microseconds.
 */
export function zeros(count: number): number[] {
  return template.slice(0, count);
}
