/** Steps between two questions whether to stop. */
const STEPS_PER_LOOK = 10_000_000;

/** Work in steps of about a nanosecond, of which so many are allowed. */
export class StepCount {
  steps = 0;
  private most: number;
  private nextLook: number;
  private readonly stop: () => boolean;

  /** `stop`: asked now and then; true spends what is left. */
  constructor(most: number, stop: () => boolean) {
    this.most = most;
    this.stop = stop;
    this.nextLook = Math.min(most, STEPS_PER_LOOK);
  }

  get isSpent(): boolean {
    return this.steps > this.nextLook && this.look();
  }

  /** Takes steps that count as none. */
  free<T>(work: () => T): T {
    const { steps, most, nextLook } = this;
    this.most = Number.POSITIVE_INFINITY;
    this.nextLook = Number.POSITIVE_INFINITY;
    const result = work();
    this.steps = steps;
    this.most = most;
    this.nextLook = nextLook;
    return result;
  }

  private look(): boolean {
    if (this.steps <= this.most && this.stop()) {
      this.most = -1;
      this.nextLook = -1;
    }
    if (this.steps > this.most) return true;
    this.nextLook = Math.min(this.most, this.steps + STEPS_PER_LOOK);
    return false;
  }
}
