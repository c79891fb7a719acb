import { grown } from './grown.ts';

/** Rectangles in which selections are known not to lie: a hash table with a list of rectangles for each selection. */
export class KnownFailures {
  /** By slot: the selection and 1, 0 where the slot is free, and where its list begins. */
  private slots = new Int32Array(1 << 11);
  private used = 0;
  /** Width, height and the next one in the list, −1 at its end. */
  private entries = new Int32Array(3 << 10);
  private entriesUsed = 0;

  /** Whether the selection is known not to lie in a rectangle that is no smaller. */
  has(selection: number, w: number, h: number): boolean {
    const slot = this.slotOf(selection);
    if (this.slots[slot] === 0) return false;
    const { entries } = this;
    for (let at = this.slots[slot + 1]!; at >= 0; at = entries[at + 2]!) {
      if (entries[at]! >= w && entries[at + 1]! >= h) return true;
    }
    return false;
  }

  add(selection: number, w: number, h: number): void {
    if (4 * this.used >= this.slots.length) this.grow();
    const slot = this.slotOf(selection);
    if (this.slots[slot] === 0) {
      this.slots[slot] = selection + 1;
      this.slots[slot + 1] = -1;
      this.used++;
    }
    this.entries = grown(this.entries, this.entriesUsed + 3);
    const at = this.entriesUsed;
    this.entries[at] = w;
    this.entries[at + 1] = h;
    this.entries[at + 2] = this.slots[slot + 1]!;
    this.slots[slot + 1] = at;
    this.entriesUsed += 3;
  }

  private slotOf(selection: number): number {
    const { slots } = this;
    const mask = slots.length - 1;
    let slot = (Math.imul(selection, 0x9e3779b1) >>> 7) & mask & ~1;
    while (slots[slot] !== selection + 1 && slots[slot] !== 0) slot = (slot + 2) & mask;
    return slot;
  }

  private grow(): void {
    const { slots } = this;
    this.slots = new Int32Array(2 * slots.length);
    for (let i = 0; i < slots.length; i += 2) {
      if (slots[i] === 0) continue;
      const slot = this.slotOf(slots[i]! - 1);
      this.slots[slot] = slots[i]!;
      this.slots[slot + 1] = slots[i + 1]!;
    }
  }
}
