declare module '@mapbox/shelf-pack' {
  /** Only what the reference uses. */
  export default class ShelfPack {
    constructor(width: number, height: number);
    /** Null when there is no shelf for it. */
    packOne(width: number, height: number): object | null;
  }
}
