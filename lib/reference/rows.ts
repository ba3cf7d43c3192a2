/**
 * The one row of a table that `matches`, or an Error: a table that lost a row its readers count on is a broken build,
 * not a wrong argument.
 * @example onlyRow("meters", meters, (row) => row.meter === "commonHandheld").displayCounts; // 6000
 */
export function onlyRow<Row>(table: string, rows: readonly Row[], matches: (row: Row) => boolean): Row {
  const found = rows.filter(matches);
  const [row] = found;
  if (row === undefined || found.length > 1) throw new Error(`${table}: ${found.length} rows match, expected 1`);
  return row;
}
