import { escaped, FACES } from '@pullbook/charts';
import PDFDocument from 'pdfkit';
import { fontPathOf } from '../font-folder.ts';
import { NUMBERS_FILE } from '../numbers/names.ts';

export type Pdf = InstanceType<typeof PDFDocument>;

export interface PdfStart {
  title: string;
  /** Of a page, points. */
  width: number;
  height: number;
  /** ISO 8601, from the book; `null`: the file says none. Never the clock: the same input gives the same bytes. */
  day: string | null;
  /** JSON that goes along as an attached file; missing: none. */
  numbers?: unknown;
}

/** A tagged PDF without a page, with the shipped letters by their face and the numbers attached. */
export function newPdf({ title, width, height, day, numbers }: PdfStart): Pdf {
  const moment = day === null ? null : new Date(day);
  const date = moment === null || Number.isNaN(moment.getTime()) ? null : moment;
  const pdf = new PDFDocument({
    size: [width, height],
    margin: 0,
    autoFirstPage: false,
    bufferPages: true,
    pdfVersion: '1.7',
    tagged: true,
    lang: 'en',
    displayTitle: true,
    font: '',
    info: { Title: title, Producer: 'Pullbook', Creator: 'Pullbook', CreationDate: date ?? new Date(0) },
  });
  if (date === null) Reflect.deleteProperty(pdf.info, 'CreationDate');
  // What pdfkit writes itself neither escapes the title nor lets the date be unknown.
  Object.assign(pdf, { _addInfo: () => Reflect.apply(appendXml, pdf, [titleXml(title)]) });
  for (const face of FACES) pdf.registerFont(face, fontPathOf(face));
  if (numbers !== undefined) {
    pdf.file(Buffer.from(JSON.stringify(numbers)), {
      name: NUMBERS_FILE,
      type: 'application/json',
      description: 'The figures shown, as JSON: kW, N·m, kPa, r/min',
    });
  }
  return pdf;
}

function appendXml(this: Pdf & { appendXML?: (xml: string) => void }, xml: string): void {
  this.appendXML?.(xml);
}

const titleXml = (title: string): string =>
  `<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escaped(title)}</rdf:li></rdf:Alt></dc:title></rdf:Description>`;

/** Ends the file and gives its bytes. */
export async function bytesOf(pdf: Pdf): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  const whole = new Promise<void>((resolve, reject) => {
    pdf.on('data', (part: Uint8Array) => parts.push(part));
    pdf.on('end', resolve);
    pdf.on('error', reject);
  });
  pdf.end();
  await whole;
  return new Uint8Array(Buffer.concat(parts));
}
