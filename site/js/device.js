// @ts-check
// What only this device knows or does: its clock, and its folder for downloads.

/** How far this device's clock is ahead, from each day of this year on which that changes: "2027-03-28 120" and so on. */
export function clock() {
  const changes = [];
  let before;
  for (const day = new Date(new Date().getFullYear(), 0, 1, 12), year = day.getFullYear(); day.getFullYear() === year; day.setDate(day.getDate() + 1)) {
    const ahead = -day.getTimezoneOffset();
    if (ahead !== before) changes.push(`${year}-${String(day.getMonth() + 1).padStart(2, "0")}-${String(day.getDate()).padStart(2, "0")} ${ahead}`);
    before = ahead;
  }
  return changes.join("\n");
}

/** What day and time it is here: "2027-07-15T14:05". */
export function today() {
  const now = new Date();
  const two = (/** @type {number} */ n) => String(n).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}T${two(now.getHours())}:${two(now.getMinutes())}`;
}

/** Prints the set that stands ready for it, instead of the job in sight. */
export function paper() {
  const { dataset } = document.documentElement;
  dataset.paper = "set";
  addEventListener("afterprint", () => delete dataset.paper, { once: true });
  print();
}

/**
 * @param {string} name
 * @param {string} type
 * @param {string} text
 */
export function save(name, type, text) {
  const a = document.createElement("a");
  a.href = URL.createObjectURL(new Blob([text], { type }));
  a.download = name;
  a.click();
  setTimeout(() => URL.revokeObjectURL(a.href), 10000);
}
