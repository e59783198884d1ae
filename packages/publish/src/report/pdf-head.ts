import { THEMES } from '@pullbook/charts';
import type { ReportDescription } from '@pullbook/views/publish';
import type { PdfFlow } from '../pdf/pdf-flow.ts';
import { drawLine, linesOf, type Run } from '../pdf/pdf-lines.ts';
import { pictureBytes } from '../pdf/picture-bytes.ts';
import { boxed } from './pdf-box.ts';

const { ink, softInk, cautionChip, cautionInk, quietChip } = THEMES.light;
const MARK = { width: 120, height: 34 } as const;

/** Whose report it is, the question, the answer with its verdict, and what nobody may overlook. */
export function reportHead(flow: PdfFlow, report: ReportDescription): void {
  letterhead(flow, report);
  flow.paragraph([{ text: report.question, face: 'serifStrong', size: 19, colour: ink }], {
    type: 'H1',
    leading: 1.2,
  });
  flow.space(5);
  flow.paragraph(
    report.answer.map(({ text, strong, quiet }) => ({
      text,
      face: strong ? 'serifStrong' : 'serif',
      size: 13,
      colour: quiet ? softInk : ink,
    })),
    { leading: 1.32 },
  );
  for (const { name, chip, figures } of report.verdicts) {
    flow.space(4);
    boxed(flow, { ground: quietChip, bar: ink }, [
      [
        ...(name === '' ? [] : [{ text: `${name}: `, face: 'sans', size: 9, colour: ink } satisfies Run]),
        { text: chip.text, face: 'sansStrong', size: 9, colour: ink },
        ...(figures === ''
          ? []
          : [{ text: ` · ${figures}`, face: 'sans', size: 9, colour: ink } satisfies Run]),
      ],
    ]);
  }
  flow.space(4);
  flow.paragraph([{ text: report.facts, face: 'sans', size: 9, colour: softInk }]);
  if (report.warnings.length > 0) {
    flow.space(4);
    boxed(
      flow,
      { ground: cautionChip, bar: cautionInk },
      report.warnings.map((text) => [{ text, face: 'sansStrong', size: 9, colour: cautionInk }]),
    );
  }
  flow.space(4);
}

/** The shop's mark at the left, its name and where it is found at the right; nothing where neither is set. */
function letterhead(flow: PdfFlow, { signature, contact }: ReportDescription): void {
  if (signature === null && contact === '') return;
  const { pdf } = flow;
  let height = 0;
  const mark = signature?.mark ?? null;
  if (mark !== null) {
    const scale = Math.min(MARK.width / mark.width, MARK.height / mark.height);
    height = scale * mark.height;
    const top = flow.y;
    flow.document.add(
      pdf.struct('Figure', { alt: signature?.name || 'Mark of the shop' }, [
        () => pdf.image(pictureBytes(mark.address), flow.left, top, { width: scale * mark.width, height }),
      ]),
    );
  }
  const words: Run[] = [
    { text: signature?.name ?? '', face: 'sansStrong' as const, size: 10, colour: ink },
    { text: contact, face: 'sans' as const, size: 8.5, colour: softInk },
  ].filter(({ text }) => text !== '');
  let y = flow.y;
  for (const run of words) {
    for (const line of linesOf(pdf, [run], flow.width - MARK.width - 20)) {
      const baseline = y + run.size;
      flow.document.add(
        pdf.struct('P', {}, [() => drawLine(pdf, line, flow.left + flow.width - line.width, baseline)]),
      );
      y += 1.35 * run.size;
    }
  }
  flow.y = Math.max(flow.y + height, y) + 8;
  flow.rule(flow.left, flow.y, flow.width);
  flow.space(10);
}
