/**
 * The part of papaparse that writes. Its published types pull in those of Node, which `src/` must not see, so the
 * main file is named in full and declared here.
 */
declare module 'papaparse/papaparse.js' {
  export interface WriteOptions {
    readonly newline: string;
    readonly header: boolean;
  }
  const papaparse: {
    unparse(
      table: { readonly fields: readonly string[]; readonly data: readonly (readonly string[])[] },
      options: WriteOptions,
    ): string;
  };
  export default papaparse;
}
