/** The day on this machine's clock, YYYY-MM-DD: read here once and passed on, never inside a calculation. */
export function today(): string {
  const now = new Date();
  const two = (value: number) => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
