// Plans that no example has, as plan files.

/**
 * Rows that are all alike, on a pump that is strong enough for them.
 * @param {number} rows
 * @param {number} plants in each row
 * @param {string} [name]
 */
export const alike = (rows, plants, name = "Alike") => ({
  format: "evenrow plan 1",
  name,
  place: { length: 60, width: 60 },
  points: [{ flow: 0, head: 34 }, { flow: 100, head: 29 }, { flow: 400, head: 19 }],
  runs: [{}],
  emitters: [{}],
  rows: Array.from({ length: rows }, () => ({ plants })),
});
