export { type Encoder, findEncoder } from './clip/encoder.ts';
export { makeClip } from './clip/make-clip.ts';
export * from './clip/model.ts';
export * from './numbers/read-published.ts';
export { stillPdf } from './pdf/still-pdf.ts';
export { reportHtml } from './report/report-html.ts';
export * from './report/report-pdf.ts';
export * from './still-image.ts';
