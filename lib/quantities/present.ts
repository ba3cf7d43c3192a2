/** The record without the keys whose value is undefined, in the same order: absent means not given, everywhere. */
export function present<T extends object>(values: { readonly [K in keyof T]: T[K] | undefined }): T {
  const kept: Partial<T> = {};
  for (const key in values) {
    const value = values[key];
    if (value !== undefined) kept[key] = value as T[typeof key];
  }
  return kept as T;
}
