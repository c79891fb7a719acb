/** The places on which moves may work: all of them, or a window of a few so that the search goes deep there. */
export class ActivePlaces {
  readonly list: Int32Array;
  count = 0;
  private readonly member: Uint8Array;

  constructor(places: number) {
    this.list = new Int32Array(places);
    this.member = new Uint8Array(places);
    this.includeAll();
  }

  includeAll(): void {
    for (let place = 0; place < this.list.length; place++) this.include(place);
  }

  include(place: number): void {
    if (this.member[place] === 1) return;
    this.member[place] = 1;
    this.list[this.count++] = place;
  }

  clear(): void {
    this.member.fill(0);
    this.count = 0;
  }
}
