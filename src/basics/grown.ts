/** The list, or a copy of at least twice its length with room for so many numbers. */
export function grown<T extends Int32Array | Float64Array>(list: T, needed: number): T {
  if (needed <= list.length) return list;
  const larger = new (list.constructor as new (length: number) => T)(Math.max(needed, 2 * list.length));
  larger.set(list);
  return larger;
}
