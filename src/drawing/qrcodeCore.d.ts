/**
 * The part of qrcode that makes the squares of a code, without images and files. The published types pull in those of
 * Node, which `src/` must not see, so the file is named in full and declared here.
 */
declare module 'qrcode/lib/core/qrcode.js' {
  export interface QrSymbol {
    readonly version: number;
    readonly modules: {
      /** Modules along each side. */
      readonly size: number;
      /** Row after row; 1 is dark. */
      readonly data: Uint8Array;
    };
  }
  const qrcode: {
    create(
      segments: readonly { readonly data: string; readonly mode: 'alphanumeric' }[],
      options: { readonly errorCorrectionLevel: 'L' | 'M' | 'Q' | 'H' },
    ): QrSymbol;
  };
  export default qrcode;
}
