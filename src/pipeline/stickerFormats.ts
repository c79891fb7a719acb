export { type StickerFormat, stickerFormatInWords, stickerFormats } from '../drawing/panelStickerFormats.ts';
